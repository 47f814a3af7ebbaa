import type { Family } from "./Family.js";

/** Poisson totals with a log link. */
export const poissonFamily: Family = {
  mean: Math.exp,
  variance: Math.exp,
  evaluate: (y, m, eta, weights, residuals) => {
    let lost = 0;
    for (let i = 0; i < eta.length; i += 1) {
      const expected = m[i]! * Math.exp(eta[i]!);
      weights[i] = expected;
      residuals[i] = y[i]! - expected;
      lost -= residuals[i]!;
      if (y[i]! > 0) lost += y[i]! * (Math.log(y[i]! / m[i]!) - eta[i]!);
    }
    return 2 * lost;
  },
  start: (y, m) => Math.log(y / m + 0.1),
  most: () => Infinity,
};
