import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import { asOfDate } from "./asOfDate.js";
import { presenceEnd } from "./presenceEnd.js";
import { stayAt } from "./stayAt.js";

/**
 * Horses that are not there on the day of the review (`asOfDate`): they have left by then, or come later.
 *
 * Missing: a horse without a stay in the records is taken as still there; without a day nobody is gone.
 */
export function horsesGone(study: Pick<Study, "visits" | "horses" | "settings">): ReadonlySet<string> {
  const asOf = asOfDate(study);
  if (asOf === null) return new Set();
  const gone = [...grouped(study.horses, ({ horseId }) => horseId)].filter(
    ([horseId, stays]) => stayAt(stays, horseId, asOf) === null || presenceEnd(stays, asOf) === asOf,
  );
  return new Set(gone.map(([horseId]) => horseId));
}
