import { cephes } from "./cephes.js";
import { requireCount } from "./requireCount.js";

/**
 * Natural logarithm of the factorial of a count.
 *
 * Errors: `not_a_number`; `not_a_count`.
 */
export function logFactorial(n: number): number {
  requireCount("n", n);
  return n < 2 ? 0 : cephes().lgam(n + 1);
}
