import { cephes } from "./cephes.js";
import { requireWithin } from "./requireWithin.js";

/**
 * Value below which a beta variable with shapes `a` and `b` lies with probability `p`.
 *
 * Errors: `not_a_number`; `out_of_range`.
 */
export function betaQuantile(p: number, a: number, b: number): number {
  requireWithin("probability", p, 0, 1);
  requireWithin("first shape", a, Number.MIN_VALUE, Infinity);
  requireWithin("second shape", b, Number.MIN_VALUE, Infinity);
  return p === 0 || p === 1 ? p : cephes().incbi(a, b, p);
}
