import { cephes } from "./cephes.js";
import { gammaLarge } from "./gammaLarge.js";

/**
 * Regularised upper incomplete gamma function of `x` (0 or more) with shape `a` (above 0): 0 where it is smaller than the smallest
 * number and 1 where its complement is, which cephes reports as errors.
 */
export function gammaUpper(a: number, x: number): number {
  if (a >= 1e4) return gammaLarge(a, x);
  const { igamc, lgam } = cephes();
  if (a * Math.log(x) - x - lgam(a) < -709) return x > a ? 0 : 1;
  return igamc(a, x);
}
