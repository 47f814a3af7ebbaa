import { logChoose } from "./logChoose.js";

/**
 * Two-sided exact binomial p: probability, for chance `p` strictly between 0 and 1, of all counts no likelier than `cases` of
 * `n`. Likelihoods within a relative 1e-7 count as equal, against rounding.
 */
export function binomialTwoSided(cases: number, n: number, p: number): number {
  const log = (x: number): number => logChoose(n, x) + x * Math.log(p) + (n - x) * Math.log1p(-p);
  const here = log(cases) + Math.log1p(1e-7);
  let sum = 0;
  for (let x = 0; x <= n; x += 1) {
    const there = log(x);
    if (there <= here) sum += Math.exp(there);
  }
  return Math.min(1, sum);
}
