import type { Family } from "./Family.js";

/** Poisson totals with a log link. */
export const poissonFamily: Family = {
  mean: Math.exp,
  variance: Math.exp,
  residual: (y, m, eta) => y - m * Math.exp(eta),
  deviance: (y, m, eta) => {
    const expected = m * Math.exp(eta);
    return 2 * ((y === 0 ? 0 : y * (Math.log(y / m) - eta)) - (y - expected));
  },
  start: (y, m) => Math.log(y / m + 0.1),
  most: () => Infinity,
};
