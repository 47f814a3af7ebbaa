import { betaCumulative } from "./betaCumulative.js";
import { findRoot } from "./findRoot.js";
import { fromCephes } from "./fromCephes.js";
import { requireWithin } from "./requireWithin.js";

/**
 * Value below which a beta variable with shapes `a` and `b` lies with probability `p`; 0 where it is too small for a number. Keeps
 * nine digits of the probability or more.
 *
 * Method: the inverse of cephes; where that stops early or gives up, as it does far in the tails, the root is found again by bracketing.
 *
 * Errors: `not_a_number`; `out_of_range`.
 */
export function betaQuantile(p: number, a: number, b: number): number {
  requireWithin("probability", p, 0, 1);
  requireWithin("first shape", a, Number.MIN_VALUE, Infinity);
  requireWithin("second shape", b, Number.MIN_VALUE, Infinity);
  if (p === 0 || p === 1) return p;
  const quick = fromCephes((library) => library.incbi(a, b, p));
  if (quick !== null && Math.abs(betaCumulative(quick, a, b) - p) < 1e-9 * Math.min(p, 1 - p)) return quick;
  // Far below 1 the root is sought on its logarithm, where any number can be told from 0.
  if (betaCumulative(1e-9, a, b) < p) return findRoot((x) => betaCumulative(x, a, b) - p, 1e-9, 1);
  if (betaCumulative(Number.MIN_VALUE, a, b) >= p) return 0;
  return Math.exp(findRoot((x) => betaCumulative(Math.exp(x), a, b) - p, Math.log(Number.MIN_VALUE), Math.log(1e-9)));
}
