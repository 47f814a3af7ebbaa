import { cephes } from "./cephes.js";
import { requireWithin } from "./requireWithin.js";

/**
 * Value below which a chi-square variable with `df` degrees of freedom lies with probability `p`; infinite at 1.
 * Accurate to about 1e-16 / p of itself: good for limits, not for tails far below 1e-6.
 *
 * Errors: `not_a_number`; `out_of_range`.
 */
export function chiSquareQuantile(p: number, df: number): number {
  requireWithin("probability", p, 0, 1);
  requireWithin("degrees of freedom", df, Number.MIN_VALUE, Infinity);
  if (p === 0) return 0;
  return p === 1 ? Infinity : 2 * cephes().igami(df / 2, 1 - p);
}
