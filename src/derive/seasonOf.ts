import { requiredDay } from "./requiredDay.js";

/** Quarter of the year. */
export type Season = "winter" | "spring" | "summer" | "autumn";

const northern: readonly Season[] = ["winter", "spring", "summer", "autumn"];
const southern: readonly Season[] = ["summer", "autumn", "winter", "spring"];

/**
 * Season of a calendar day, in whole months: December to February is the winter of the northern half of the world and the summer of
 * the southern.
 *
 * Errors: `not_a_date`.
 *
 * Source: common practice of meteorological seasons, no source.
 */
export function seasonOf(date: string, options: { readonly hemisphere?: "north" | "south" } = {}): Season {
  requiredDay(date);
  const quarter = Math.floor((Number(date.slice(5, 7)) % 12) / 3);
  return (options.hemisphere === "south" ? southern : northern)[quarter]!;
}
