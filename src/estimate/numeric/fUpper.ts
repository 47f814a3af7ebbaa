import { betaCumulative } from "./betaCumulative.js";
import { requireWithin } from "./requireWithin.js";

/**
 * Probability that an F variable with `df1` and `df2` degrees of freedom (any positive numbers) lies above `f`.
 *
 * Errors: `not_a_number`; `out_of_range`.
 */
export function fUpper(f: number, df1: number, df2: number): number {
  requireWithin("F statistic", f, 0, Infinity);
  requireWithin("first degrees of freedom", df1, Number.MIN_VALUE, Infinity);
  requireWithin("second degrees of freedom", df2, Number.MIN_VALUE, Infinity);
  return betaCumulative(df2 / (df2 + df1 * f), df2 / 2, df1 / 2);
}
