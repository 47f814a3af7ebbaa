import { describe } from "./describe.js";
import type { Interval } from "./Interval.js";
import { requireLevel } from "./numeric/requireLevel.js";
import { tQuantile } from "./numeric/tQuantile.js";

/** A mean with its limits. */
export interface MeanInterval extends Interval {
  readonly n: number;
  readonly missing: number;
  readonly sd: number | null;
}

/**
 * Mean of independent values with Student's t limits, such as one value a horse. Values that are alike because they come from one
 * horse must be averaged per horse first.
 *
 * Method: mean ± t(n - 1) · SD / √n.
 *
 * Missing: nulls are left out and counted. With fewer than 2 values, or values that are all equal, there are no limits: both are null and `note` says why.
 *
 * Errors: `not_a_number`; `empty` when no value is left; `out_of_range` for a level not between 0 and 1.
 *
 * Source: Student (1908) Biometrika 6:1-25.
 */
export function meanInterval(values: readonly (number | null)[], options: { readonly level?: number } = {}): MeanInterval {
  const level = requireLevel(options.level ?? 0.95);
  const { n, missing, mean, sd } = describe(values);
  const base = { estimate: mean, level, n, missing, sd, method: "mean, Student's t limits" };
  if (sd === null) return { ...base, lower: null, upper: null, note: "One value has no limits." };
  if (sd === 0) return { ...base, lower: null, upper: null, note: "All values are equal, so their spread is not known." };
  const half = (tQuantile((1 + level) / 2, n - 1) * sd) / Math.sqrt(n);
  return { ...base, lower: mean - half, upper: mean + half, note: null };
}
