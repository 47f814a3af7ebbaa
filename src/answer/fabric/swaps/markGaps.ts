import type { FootTable } from "../../../derive/fabric/FootTable.js";
import { standingFeet } from "../../../derive/fabric/standingFeet.js";
import { requiredDay } from "../../../derive/requiredDay.js";
import { type EarlierMark, markFlip } from "../../../estimate/fabric/markFlip.js";
import type { FootLooks } from "./FootLooks.js";

/** Evidence for each set that two feet exchanged their labels, from an abscess track that was seen before and moves down its own foot. */
export function markGaps(
  { sets, starts, days }: FootTable,
  { markMm, newMarkShare }: FootLooks,
  [a, b]: readonly [number, number],
): Float64Array {
  const gaps = new Float64Array(days.length);
  const mark = (set: number, foot: number) => {
    const mm = markMm[set * standingFeet.length + foot] ?? NaN;
    return Number.isNaN(mm) ? null : mm;
  };
  const earlierOf = (from: number, set: number, foot: number): EarlierMark | null => {
    for (let before = set - 1; before >= from; before--) {
      const belowCoronetMm = days[before] === days[set] ? null : mark(before, foot);
      if (belowCoronetMm === null) continue;
      const daysBefore = requiredDay(sets[set]?.visitDate ?? "") - requiredDay(sets[before]?.visitDate ?? "");
      return { belowCoronetMm, daysBefore };
    }
    return null;
  };
  for (let horse = 0; horse + 1 < starts.length; horse++) {
    const [from, to] = [starts[horse] ?? 0, starts[horse + 1] ?? 0];
    let marked = false;
    for (let set = from; set < to; set++) {
      if (marked) {
        const earlier = [earlierOf(from, set, a), earlierOf(from, set, b)] as const;
        gaps[set] = markFlip([mark(set, a), mark(set, b)], earlier, newMarkShare);
      }
      marked ||= mark(set, a) !== null || mark(set, b) !== null;
    }
  }
  return gaps;
}
