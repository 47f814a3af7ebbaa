import { betaCumulative } from "./betaCumulative.js";
import { cephes } from "./cephes.js";
import { findRoot } from "./findRoot.js";
import { requireWithin } from "./requireWithin.js";

/**
 * Value below which a beta variable with shapes `a` and `b` lies with probability `p`. Keeps nine digits of
 * the probability or more.
 *
 * Method: the inverse of cephes; where that stops early, as it does far in the tails, the root is found again by bracketing.
 *
 * Errors: `not_a_number`; `out_of_range`.
 */
export function betaQuantile(p: number, a: number, b: number): number {
  requireWithin("probability", p, 0, 1);
  requireWithin("first shape", a, Number.MIN_VALUE, Infinity);
  requireWithin("second shape", b, Number.MIN_VALUE, Infinity);
  if (p === 0 || p === 1) return p;
  const quick = quickInverse(a, b, p);
  const off = Number.isNaN(quick) ? Infinity : Math.abs(betaCumulative(quick, a, b) - p);
  return off < 1e-9 * Math.min(p, 1 - p) ? quick : findRoot((x) => betaCumulative(x, a, b) - p, 0, 1);
}

/** NaN where cephes gives up. */
function quickInverse(a: number, b: number, p: number): number {
  try {
    return cephes().incbi(a, b, p);
  } catch (fault) {
    if (fault instanceof Error && fault.message.includes("underflow")) return NaN;
    throw fault;
  }
}
