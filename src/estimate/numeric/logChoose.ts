import { cephes } from "./cephes.js";
import { requireCount } from "./requireCount.js";

/**
 * Logarithm of the number of ways to choose `k` of `n`; minus infinity when `k` is above `n`.
 *
 * Errors: `not_a_number`; `not_a_count`.
 */
export function logChoose(n: number, k: number): number {
  requireCount("n", n);
  requireCount("k", k);
  if (k > n) return -Infinity;
  const { lgam } = cephes();
  return lgam(n + 1) - lgam(k + 1) - lgam(n - k + 1);
}
