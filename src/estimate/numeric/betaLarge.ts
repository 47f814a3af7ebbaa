import { cephes } from "./cephes.js";

/**
 * Regularised incomplete beta function for shapes above 0 of any size, `x` strictly between 0 and 1. Keeps about 12 digits where that
 * of cephes, good for small shapes, loses them all near the middle of a narrow distribution.
 *
 * Method: the continued fraction by Lentz's rule, in some multiple of sqrt(a + b) steps, times x^a (1-x)^b / B(a, b), which is written
 * as its value at the peak times the fall from there, so that no large logarithms are taken from each other.
 *
 * Source: NIST Digital Library of Mathematical Functions, 8.17.22 (fraction) and 5.11.1 (Stirling's series); Loader C (2000) Fast and
 * Accurate Computation of Binomial Probabilities (form of the factor).
 */
export function betaLarge(x: number, a: number, b: number): number {
  const n = a + b;
  // How far x lies above the mean, times n.
  const past = x * n - a;
  const fall = a * logLess(past / a, (x * n) / a) + b * logLess(-past / b, ((1 - x) * n) / b);
  const peak = Math.log((a / n) * (b / (2 * Math.PI))) / 2 + stirling(n) - stirling(a) - stirling(b);
  const factor = Math.exp(fall + peak);
  return x < (a + 1) / (n + 2) ? (factor / a) * fraction(x, a, b) : 1 - (factor / b) * fraction(1 - x, b, a);
}

/** log(1 + u) - u, from u and from 1 + u, which keeps the digits where u is next to -1. */
function logLess(u: number, more: number): number {
  if (Math.abs(u) > 0.05) return Math.log(more) - u;
  let [sum, power] = [0, -u];
  for (let k = 2; k <= 14; k += 1) {
    power *= -u;
    sum -= power / k;
  }
  return sum;
}

/** Logarithm of the gamma function less that of its leading part, sqrt(2 pi) z^(z - 1/2) e^-z. */
function stirling(z: number): number {
  if (z < 15) return cephes().lgam(z) - (z - 0.5) * Math.log(z) + z - Math.log(2 * Math.PI) / 2;
  const square = z * z;
  return (1 / 12 - (1 / 360 - (1 / 1260 - (1 / 1680 - 1 / 1188 / square) / square) / square) / square) / z;
}

const TINY = 1e-300;

function fraction(x: number, a: number, b: number): number {
  const away = (value: number): number => (Math.abs(value) < TINY ? TINY : value);
  let c = 1;
  let d = 1 / away(1 - ((a + b) * x) / (a + 1));
  let value = d;
  for (let m = 1; m < 1e8; m += 1) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / away(1 + even * d);
    c = away(1 + even / c);
    value *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / away(1 + odd * d);
    c = away(1 + odd / c);
    value *= d * c;
    if (Math.abs(d * c - 1) < 1e-15) break;
  }
  return value;
}
