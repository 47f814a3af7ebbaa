import { chiSquareUpper } from "./chiSquareUpper.js";
import { findRoot } from "./findRoot.js";
import { fromCephes } from "./fromCephes.js";
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
  // cephes gives up on many of a few thousand degrees of freedom, and on all beyond.
  const quick = df < 2e4 ? fromCephes((library) => 2 * library.igami(df / 2, 1 - p)) : null;
  return quick ?? findRoot((x) => chiSquareUpper(x, df) - (1 - p), 0, df + 10 * Math.sqrt(2 * df) + 100);
}
