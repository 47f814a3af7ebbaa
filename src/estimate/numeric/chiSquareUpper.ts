import { gammaUpper } from "./gammaUpper.js";
import { requireWithin } from "./requireWithin.js";

/**
 * Probability that a chi-square variable with `df` degrees of freedom (any positive number) lies above `x`.
 *
 * Errors: `not_a_number`; `out_of_range`.
 */
export function chiSquareUpper(x: number, df: number): number {
  requireWithin("chi-square statistic", x, 0, Infinity);
  requireWithin("degrees of freedom", df, Number.MIN_VALUE, Infinity);
  return x === 0 ? 1 : gammaUpper(df / 2, x / 2);
}
