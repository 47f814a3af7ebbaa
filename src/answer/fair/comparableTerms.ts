import type { FootCase } from "../../derive/FootCase.js";
import type { Term } from "../../estimate/Term.js";

/** What a fair comparison allows for, where the looks carry it: front or hind, and the season when they are spread over half the year. @private */
export function comparableTerms(graded: readonly Pick<FootCase, "end" | "monthOfYear">[]): Term[] {
  const months = new Set(graded.map(({ monthOfYear }) => monthOfYear)).size;
  const ends = new Set(graded.map(({ end }) => end)).size;
  return [...(ends === 2 ? [{ column: "end", reference: "fore" }] : []), ...(months >= 6 ? [{ season: "visitDate" }] : [])];
}
