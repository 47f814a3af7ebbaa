import { normalQuantile } from "./numeric/normalQuantile.js";
import { requireCases } from "./numeric/requireCases.js";
import { requireLevel } from "./numeric/requireLevel.js";
import { wilsonLimits } from "./numeric/wilsonLimits.js";
import type { ProportionInterval } from "./ProportionInterval.js";

/**
 * Wilson score interval of a proportion: `cases` of `n` independent things. For feet of the same horse, or horses of the same
 * yard, use `clusteredProportion` instead.
 *
 * Method: the proportions that a score test at the level would not reject. It stays within 0 and 1, has a width above zero
 * also at 0 and at n of n, and with 0 cases its upper limit is z^2 / (n + z^2). With `continuity` true the limits are moved
 * outwards by half a case (method 4 of Newcombe 1998), which covers at least the level but is wide.
 *
 * Missing: whoever counts leaves the missing out of `n` and says how many there were.
 *
 * Errors: `not_a_number`, `not_a_count`; `empty` for 0 of 0; `out_of_range` for more cases than `n` or a level not between 0
 * and 1.
 *
 * Source: Wilson EB (1927) J Am Stat Assoc 22:209-212; Newcombe RG (1998) Stat Med 17:857-872, methods 3 and 4.
 */
export function wilsonInterval(
  cases: number,
  n: number,
  options: { readonly level?: number; readonly continuity?: boolean } = {},
): ProportionInterval {
  const { level = 0.95, continuity = false } = options;
  requireCases(cases, n);
  const z = normalQuantile((1 + requireLevel(level)) / 2);
  const estimate = cases / n;
  const limits = continuity ? correctedLimits(estimate, n, z) : wilsonLimits(estimate, n, z);
  const method = continuity ? "Wilson score interval with continuity correction" : "Wilson score interval";
  return { estimate, ...limits, level, cases, n, method, note: null };
}

function correctedLimits(p: number, n: number, z: number): { lower: number; upper: number } {
  const centre = 2 * n * p + z * z;
  const scale = 2 * (n + z * z);
  const below = z * Math.sqrt(z * z - 2 - 1 / n + 4 * p * (n * (1 - p) + 1));
  const above = z * Math.sqrt(z * z + 2 - 1 / n + 4 * p * (n * (1 - p) - 1));
  return {
    lower: p === 0 ? 0 : Math.min(p, Math.max(0, (centre - 1 - below) / scale)),
    upper: p === 1 ? 1 : Math.max(p, Math.min(1, (centre + 1 + above) / scale)),
  };
}
