import type { Family } from "./Family.js";

/** y times log(y / expected), 0 for y = 0; `logExpected` is the logarithm of what is expected of one unit of m. */
function excess(y: number, m: number, logExpected: number): number {
  return y === 0 ? 0 : y * (Math.log(y / m) - logExpected);
}

/** log(1 + exp(x)) without overflow. */
function softplus(x: number): number {
  return x > 0 ? x + Math.log1p(Math.exp(-x)) : Math.log1p(Math.exp(x));
}

/** Binomial totals with a logit link. */
export const binomialFamily: Family = {
  mean: (eta) => 1 / (1 + Math.exp(-eta)),
  variance: (eta) => {
    const small = Math.exp(-Math.abs(eta));
    return small / (1 + small) ** 2;
  },
  residual: (y, m, eta) => y / (1 + Math.exp(eta)) - (m - y) / (1 + Math.exp(-eta)),
  deviance: (y, m, eta) => 2 * (excess(y, m, -softplus(-eta)) + excess(m - y, m, -softplus(eta))),
  start: (y, m) => Math.log((y + 0.5) / (m - y + 0.5)),
  most: (m) => m,
};
