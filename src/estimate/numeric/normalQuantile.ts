import { cephes } from "./cephes.js";
import { requireWithin } from "./requireWithin.js";

/**
 * Value below which a standard normal variable lies with probability `p`; infinite at 0 and 1.
 *
 * Errors: `not_a_number`; `out_of_range`.
 */
export function normalQuantile(p: number): number {
  requireWithin("probability", p, 0, 1);
  if (p === 0) return -Infinity;
  return p === 1 ? Infinity : cephes().ndtri(p);
}
