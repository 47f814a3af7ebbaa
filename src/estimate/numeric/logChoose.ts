import { logFactorial } from "./logFactorial.js";

/**
 * Logarithm of the number of ways to choose `k` of `n`; minus infinity when `k` is above `n`.
 *
 * Errors: `not_a_number`; `not_a_count`.
 */
export function logChoose(n: number, k: number): number {
  if (k > n) return -Infinity;
  return logFactorial(n) - logFactorial(k) - logFactorial(n - k);
}
