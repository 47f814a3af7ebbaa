import type { FootTable } from "../../../derive/fabric/FootTable.js";
import { standingFeet } from "../../../derive/fabric/standingFeet.js";
import { categoryFlip } from "../../../estimate/fabric/categoryFlip.js";

const KINDS = 3;

/**
 * Evidence for each set that the rows at two places (set and foot, as numbered in `codes`) exchanged their labels, from a word that stays with
 * a foot, such as its horn colour; the histories are those of the same two feet of the set's horse. 0 where nothing can be told.
 */
export function wordGaps(
  { starts, days }: Pick<FootTable, "starts" | "days">,
  codes: Int8Array,
  [a, b]: readonly [number, number],
  fewestDays: number,
): Float64Array {
  const gaps = new Float64Array(days.length);
  const code = (set: number, foot: number) => codes[set * standingFeet.length + foot] ?? -1;
  for (let horse = 0; horse + 1 < starts.length; horse++) {
    const [from, to] = [starts[horse] ?? 0, starts[horse + 1] ?? 0];
    let histories: readonly [number[], number[]] | null = null;
    for (let set = from; set < to; set++) {
      const [first, second] = [code(set, a), code(set, b)];
      if (first < 0 || second < 0 || first === second) continue;
      histories ??= [countsOf(from, to, days, (at) => code(at, a)), countsOf(from, to, days, (at) => code(at, b))];
      gaps[set] = categoryFlip([first, second], [without(histories[0], first), without(histories[1], second)], fewestDays);
    }
  }
  return gaps;
}

/** On how many days each word was written. */
function countsOf(from: number, to: number, days: Int32Array, codeAt: (set: number) => number): number[] {
  const counts = Array.from({ length: KINDS }, () => 0);
  for (let set = from; set < to; set++) {
    const code = codeAt(set);
    if (code >= 0 && (set === from || days[set] !== days[set - 1])) counts[code] = (counts[code] ?? 0) + 1;
  }
  return counts;
}

function without(counts: readonly number[], code: number): number[] {
  return counts.map((count, kind) => (kind === code ? count - 1 : count));
}
