import { betaQuantile } from "./betaQuantile.js";
import { requireWithin } from "./requireWithin.js";

/**
 * Value below which an F variable with `df1` and `df2` degrees of freedom (any positive numbers) lies with probability `p`;
 * infinite at 1.
 *
 * Errors: `not_a_number`; `out_of_range`.
 */
export function fQuantile(p: number, df1: number, df2: number): number {
  requireWithin("probability", p, 0, 1);
  requireWithin("first degrees of freedom", df1, Number.MIN_VALUE, Infinity);
  requireWithin("second degrees of freedom", df2, Number.MIN_VALUE, Infinity);
  const inner = betaQuantile(p, df1 / 2, df2 / 2);
  if (inner < 0.5) return (df2 * inner) / (df1 * (1 - inner));
  const outer = betaQuantile(1 - p, df2 / 2, df1 / 2);
  return (df2 * (1 - outer)) / (df1 * outer);
}
