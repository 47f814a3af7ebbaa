import { betaLarge } from "./betaLarge.js";
import { cephes } from "./cephes.js";
import { requireWithin } from "./requireWithin.js";

/**
 * Probability that a beta variable with shapes `a` and `b` lies below `x`: the regularised incomplete beta function. A shape
 * of 0 puts all probability at that end.
 *
 * Errors: `not_a_number`; `out_of_range`.
 */
export function betaCumulative(x: number, a: number, b: number): number {
  requireWithin("x", x, 0, 1);
  requireWithin("first shape", a, 0, Infinity);
  requireWithin("second shape", b, 0, Infinity);
  if (x === 1 || a === 0) return 1;
  if (x === 0 || b === 0) return 0;
  return a + b > LARGE ? betaLarge(x, a, b) : cephes().incbet(a, b, x);
}

/** Shapes that add up to more than this are too much for cephes. */
const LARGE = 10_000;
