import { cephes } from "./cephes.js";

/**
 * Regularised upper incomplete gamma function for shapes `a` of 10,000 and more. Keeps about ten digits where that of cephes, good for small
 * shapes, loses them all near the middle of a narrow distribution.
 *
 * Method: the normal tail at eta sqrt(a), eta^2 / 2 = u - log(1 + u) with u = x / a - 1, and the uniform expansion of the rest in powers of
 * 1 / a; its coefficients as power series of eta.
 *
 * Source: NIST Digital Library of Mathematical Functions, 8.12.3-8.12.11; Temme NM (1979) SIAM J Math Anal 10:757-766. Coefficients from
 * DiDonato AR, Morris AH (1986) ACM Trans Math Softw 12:377-393, from memory; held to R's pgamma in the tests.
 */
export function gammaLarge(a: number, x: number): number {
  const u = (x - a) / a;
  const half = lessLog(u);
  const exponent = a * half;
  if (exponent > 709) return x > a ? 0 : 1;
  const eta = Math.sign(u) * Math.sqrt(2 * half);
  const beyond = cephes().igamc(0.5, exponent) / 2;
  const series = SERIES.reduceRight((sum, coefficients) => sum / a + polynomial(coefficients, eta), 0);
  const rest = (Math.exp(-exponent) * series) / Math.sqrt(2 * Math.PI * a);
  return (u > 0 ? beyond : 1 - beyond) + rest;
}

/** Powers of eta in the coefficients of 1, 1/a and 1/a^2. */
const SERIES: readonly (readonly number[])[] = [
  [-1 / 3, 1 / 12, -2 / 135, 1 / 864, 1 / 2835, -0.0001787551440329218, 3.919263178522438e-5, -2.185448510679992e-6],
  [-1 / 540, -1 / 288, 1 / 378, -0.0009902263374485596, 2.0576131687242798e-4],
  [25 / 6048, -2.681327160493827e-3, 7.716049382716049e-4],
];

function polynomial(coefficients: readonly number[], eta: number): number {
  return coefficients.reduceRight((sum, coefficient) => sum * eta + coefficient, 0);
}

/** u - log(1 + u). */
function lessLog(u: number): number {
  if (Math.abs(u) > 0.05) return u - Math.log1p(u);
  let [sum, power] = [0, -u];
  for (let k = 2; k <= 14; k += 1) {
    power *= -u;
    sum += power / k;
  }
  return sum;
}
