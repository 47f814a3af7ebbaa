import { cephes } from "./cephes.js";
import { gammaUpper } from "./gammaUpper.js";
import { requireNumber } from "./requireNumber.js";

/**
 * Probability that a standard normal variable lies above `z`. Small tails keep their relative accuracy.
 *
 * Errors: `not_a_number`.
 */
export function normalUpper(z: number): number {
  requireNumber("z", z);
  return z > 1 ? gammaUpper(0.5, (z * z) / 2) / 2 : cephes().ndtr(-z);
}
