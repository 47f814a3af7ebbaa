import { cephes } from "./cephes.js";
import { chiSquareUpper } from "./chiSquareUpper.js";
import { findRoot } from "./findRoot.js";
import { normalQuantile } from "./normalQuantile.js";
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
  if (p === 1) return Infinity;
  if (df < 2e4) return 2 * cephes().igami(df / 2, 1 - p);
  // cephes gives up here. The approximation of Wilson and Hilferty (1931) is off by far less than a standard deviation.
  const near = df * (1 - 2 / (9 * df) + normalQuantile(p) * Math.sqrt(2 / (9 * df))) ** 3;
  const sd = Math.sqrt(2 * df);
  return findRoot((x) => chiSquareUpper(x, df) - (1 - p), near - sd, near + sd);
}
