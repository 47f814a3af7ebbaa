import { normalQuantile } from "./numeric/normalQuantile.js";
import { requireLevel } from "./numeric/requireLevel.js";
import { requireWithin } from "./numeric/requireWithin.js";

/**
 * Smallest difference between two measurements of one thing that is more than measurement error, in the unit of `sem`.
 *
 * Method: z sqrt(2) sem, where `sem` is the standard error of measurement and z the two-sided normal quantile of `level`. It
 * says a change is real, not that it matters.
 *
 * Missing: not applicable.
 *
 * Errors: `not_a_number`; `out_of_range` for a negative `sem` or a level not between 0 and 1.
 *
 * Source: Bland JM, Altman DG (1996) BMJ 312:1654, where it is called repeatability.
 */
export function minimumDetectableChange(sem: number, options: { readonly level?: number } = {}): number {
  requireWithin("standard error of measurement", sem, 0, Infinity);
  return normalQuantile((1 + requireLevel(options.level ?? 0.95)) / 2) * Math.SQRT2 * sem;
}
