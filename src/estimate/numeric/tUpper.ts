import { betaCumulative } from "./betaCumulative.js";
import { requireNumber } from "./requireNumber.js";
import { requireWithin } from "./requireWithin.js";

/**
 * Probability that a Student t variable with `df` degrees of freedom (any positive number) lies above `t`.
 *
 * Errors: `not_a_number`; `out_of_range`.
 */
export function tUpper(t: number, df: number): number {
  requireNumber("t", t);
  requireWithin("degrees of freedom", df, Number.MIN_VALUE, Infinity);
  const square = t * t;
  // Near the middle the first form would round t away.
  const tail =
    square > 1
      ? betaCumulative(df / (df + square), df / 2, 0.5) / 2
      : (1 - betaCumulative(square / (df + square), 0.5, df / 2)) / 2;
  return t >= 0 ? tail : 1 - tail;
}
