import { cephes } from "./cephes.js";

/**
 * Regularised upper incomplete gamma function of `x` (0 or more) with shape `a` (above 0): 0 where it is smaller than the smallest
 * number, which cephes reports as an error.
 */
export function gammaUpper(a: number, x: number): number {
  const { igamc, lgam } = cephes();
  return x > a && a * Math.log(x) - x - lgam(a) < -709 ? 0 : igamc(a, x);
}
