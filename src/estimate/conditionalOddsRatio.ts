import { EstimateError } from "./EstimateError.js";
import type { Interval } from "./Interval.js";
import { conditionalOdds, type ConditionalCount } from "./numeric/conditionalOdds.js";
import { requireLevel } from "./numeric/requireLevel.js";
import { requireTable } from "./numeric/requireTable.js";
import { tableCount } from "./numeric/tableCount.js";
import type { TwoByTwo } from "./TwoByTwo.js";

/** Common odds ratio of strata, conditional on all margins. */
export interface ConditionalOddsRatio extends Interval {
  /** Two-sided exact p: all totals no likelier than the one seen. */
  readonly p: number;
  /** Exposed cases of all strata. */
  readonly statistic: number;
  readonly strata: number;
  readonly n: number;
}

/**
 * Exact common odds ratio of several two-by-two tables (strata), conditional on the margins of each: the small-number
 * companion of `mantelHaenszel`.
 *
 * Method: the distribution of the sum of the cells a is the convolution of the hypergeometric distributions of the strata;
 * estimate, limits and two-sided p come from it as in `fisherExact`. A stratum with an empty margin adds nothing. When no
 * stratum is left the estimate is null and the limits are 0 and `Infinity`.
 *
 * Missing: whoever counts leaves the missing out and says how many there were.
 *
 * Errors: `empty` for no strata or an empty stratum; `not_a_number`, `not_a_count`; `out_of_range` for a level not between 0
 * and 1, or strata so large that too many tables have their margins (counts of some thousands in several strata).
 *
 * Source: Gart JJ (1970) Biometrika 57:471-475; Mehta CR, Patel NR, Gray R (1985) J Am Stat Assoc 80:969-973.
 */
export function conditionalOddsRatio(
  strata: readonly TwoByTwo[],
  options: { readonly level?: number } = {},
): ConditionalOddsRatio {
  const { level = 0.95 } = options;
  const tail = (1 - requireLevel(level)) / 2;
  if (strata.length === 0) throw new EstimateError("empty", "There are no strata.", "Give at least one two-by-two table.");
  for (const stratum of strata) requireTable(stratum);
  const statistic = strata.reduce((sum, { a }) => sum + a, 0);
  const total = strata.map(tableCount).reduce(convolved);
  const { estimate, lower, upper, pTwoSided } = conditionalOdds(total, statistic, { lowerTail: tail, upperTail: tail });
  return {
    estimate,
    lower,
    upper,
    level,
    p: pTwoSided,
    statistic,
    strata: strata.length,
    n: strata.reduce((sum, { a, b, c, d }) => sum + a + b + c + d, 0),
    method: "Conditional common odds ratio with exact limits",
    note: estimate === null ? "Every stratum has an empty margin, so nothing is said about the odds ratio." : null,
  };
}

/** Pairs of counts that are added up at most: some seconds. */
const MOST_PAIRS = 50_000_000;

/** Distribution of the sum of two counts. Added up as logarithms, so that far tails do not vanish. */
function convolved(first: ConditionalCount, second: ConditionalCount): ConditionalCount {
  const [x, y] = [first.logWeights, second.logWeights];
  if (x.length * y.length > MOST_PAIRS) {
    throw new EstimateError(
      "out_of_range",
      "The strata are too large for an exact method.",
      "Use mantelHaenszel, whose limits are as good with counts of this size.",
    );
  }
  const sums = new Float64Array(x.length + y.length - 1).fill(-Infinity);
  for (let i = 0; i < x.length; i += 1) {
    for (let j = 0; j < y.length; j += 1) sums[i + j] = logSum(sums[i + j]!, x[i]! + y[j]!);
  }
  return { lowest: first.lowest + second.lowest, logWeights: sums };
}

function logSum(u: number, v: number): number {
  if (u === -Infinity) return v;
  return Math.max(u, v) + Math.log1p(Math.exp(-Math.abs(u - v)));
}
