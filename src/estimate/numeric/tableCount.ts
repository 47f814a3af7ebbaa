import type { TwoByTwo } from "../TwoByTwo.js";
import type { ConditionalCount } from "./conditionalOdds.js";
import { logChoose } from "./logChoose.js";

/** Hypergeometric distribution of cell a of a two-by-two table given its margins. */
export function tableCount({ a, b, c, d }: TwoByTwo): ConditionalCount {
  const lowest = Math.max(0, a - d);
  const highest = Math.min(a + b, a + c);
  const logWeights: number[] = [];
  for (let x = lowest; x <= highest; x += 1) logWeights.push(logChoose(a + b, x) + logChoose(c + d, a + c - x));
  return { lowest, logWeights };
}
