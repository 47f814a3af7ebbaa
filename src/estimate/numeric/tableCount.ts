import { EstimateError } from "../EstimateError.js";
import type { TwoByTwo } from "../TwoByTwo.js";
import type { ConditionalCount } from "./conditionalOdds.js";
import { logChoose } from "./logChoose.js";

/** Tables with the same margins that are walked through at most: some seconds. */
const MOST_TABLES = 2_000_000;

/**
 * Hypergeometric distribution of cell a of a two-by-two table given its margins.
 *
 * Errors: `out_of_range` for margins so large that too many tables have them.
 */
export function tableCount({ a, b, c, d }: TwoByTwo): ConditionalCount {
  const lowest = Math.max(0, a - d);
  const highest = Math.min(a + b, a + c);
  if (highest - lowest >= MOST_TABLES) {
    throw new EstimateError(
      "out_of_range",
      `${highest - lowest + 1} tables have the margins of ${a}, ${b}, ${c}, ${d}: too many for an exact method.`,
      "Use tableOf or mantelHaenszel, whose limits are as good with counts of this size.",
    );
  }
  const logWeights = new Float64Array(highest - lowest + 1);
  for (let x = lowest; x <= highest; x += 1) logWeights[x - lowest] = logChoose(a + b, x) + logChoose(c + d, a + c - x);
  return { lowest, logWeights };
}
