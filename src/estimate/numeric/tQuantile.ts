import { betaQuantile } from "./betaQuantile.js";
import { requireWithin } from "./requireWithin.js";

/**
 * Value below which a Student t variable with `df` degrees of freedom (any positive number) lies with probability `p`;
 * infinite at 0 and 1.
 *
 * Errors: `not_a_number`; `out_of_range`.
 */
export function tQuantile(p: number, df: number): number {
  requireWithin("probability", p, 0, 1);
  requireWithin("degrees of freedom", df, Number.MIN_VALUE, Infinity);
  if (p === 0.5) return 0;
  if (p === 0 || p === 1) return p === 0 ? -Infinity : Infinity;
  const tails = 2 * Math.min(p, 1 - p);
  // t^2 / (df + t^2) and its complement are both beta. Each loses digits where it, or its probability, is close to 1.
  const inner = betaQuantile(1 - tails, 0.5, df / 2);
  const outer = betaQuantile(tails, df / 2, 0.5);
  const ratio = inner < tails ? inner / (1 - inner) : (1 - outer) / outer;
  const t = Math.sqrt(df * ratio);
  return p > 0.5 ? t : -t;
}
