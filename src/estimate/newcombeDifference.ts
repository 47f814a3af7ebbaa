import type { Interval } from "./Interval.js";
import { wilsonInterval } from "./wilsonInterval.js";

/** Difference of two proportions, first minus second, between -1 and 1. */
export interface ProportionDifference extends Interval {
  readonly estimate: number;
  readonly lower: number;
  readonly upper: number;
  /** Observations of both groups together. */
  readonly n: number;
  /** Cases of both groups together. */
  readonly cases: number;
}

/**
 * Difference of two proportions of independent groups, `cases1` of `n1` minus `cases2` of `n2`, with Newcombe's hybrid score
 * interval.
 *
 * Method: the Wilson limits of the two proportions are combined by squaring and adding their distances from the proportions
 * (method 10). With `continuity` true the continuity-corrected Wilson limits are used (method 11). The limits stay within -1
 * and 1, and no width is zero.
 *
 * Missing: whoever counts leaves the missing out and says how many there were.
 *
 * Errors: `not_a_number`, `not_a_count`; `empty` when a group is empty; `out_of_range` for more cases than observations or a
 * level not between 0 and 1.
 *
 * Source: Newcombe RG (1998) Stat Med 17:873-890, methods 10 and 11.
 */
export function newcombeDifference(
  cases1: number,
  n1: number,
  cases2: number,
  n2: number,
  options: { readonly level?: number; readonly continuity?: boolean } = {},
): ProportionDifference {
  const { level = 0.95, continuity = false } = options;
  const first = wilsonInterval(cases1, n1, { level, continuity });
  const second = wilsonInterval(cases2, n2, { level, continuity });
  const estimate = first.estimate - second.estimate;
  return {
    estimate,
    lower: Math.max(-1, estimate - Math.hypot(first.estimate - first.lower, second.upper - second.estimate)),
    upper: Math.min(1, estimate + Math.hypot(first.upper - first.estimate, second.estimate - second.lower)),
    level,
    n: n1 + n2,
    cases: cases1 + cases2,
    method: `Newcombe hybrid score interval${continuity ? " with continuity correction" : ""}, independent groups`,
    note: null,
  };
}
