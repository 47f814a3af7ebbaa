import type { FootTable } from "../../../derive/fabric/FootTable.js";

/** So many horses leave a standard deviation uncertain by a sixtieth (root of 1 / 4000). */
const ENOUGH = 2000;

/** Horses of a herd, by their places in the table, from which its spreads are taken: all, or of many about two thousand at even steps. */
export function someHorses({ starts }: FootTable): number[] {
  const horses = starts.length - 1;
  const step = Math.max(1, Math.floor(horses / ENOUGH));
  return Array.from({ length: Math.ceil(horses / step) }, (_, at) => at * step);
}
