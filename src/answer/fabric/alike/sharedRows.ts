import type { FootSet } from "../../../derive/fabric/FootSet.js";
import { standingFeet } from "../../../derive/fabric/standingFeet.js";
import type { FootVisit } from "../../../study/FootVisit.js";

/** The rows of the feet that both sets have, two and two. */
export function sharedRows(before: FootSet | undefined, now: FootSet | undefined): [FootVisit, FootVisit][] {
  return standingFeet.flatMap((foot): [FootVisit, FootVisit][] => {
    const [a, b] = [before?.rows[foot], now?.rows[foot]];
    return a === undefined || b === undefined ? [] : [[a, b]];
  });
}
