import type { Family } from "./Family.js";

/** Binomial totals with a logit link. */
export const binomialFamily: Family = {
  mean: (eta) => 1 / (1 + Math.exp(-eta)),
  variance: (eta) => {
    const small = Math.exp(-Math.abs(eta));
    return small / (1 + small) ** 2;
  },
  evaluate: (y, m, eta, weights, residuals) => {
    let lost = 0;
    for (let i = 0; i < eta.length; i += 1) {
      const cases = y[i]!;
      const others = m[i]! - cases;
      const x = eta[i]!;
      const small = Math.exp(-Math.abs(x));
      const likely = 1 / (1 + small);
      const rare = small * likely;
      weights[i] = m[i]! * likely * rare;
      residuals[i] = x > 0 ? cases * rare - others * likely : cases * likely - others * rare;
      lost += (x > 0 ? others * x : -cases * x) + m[i]! * Math.log1p(small);
      if (cases > 0 && others > 0) lost += cases * Math.log(cases / m[i]!) + others * Math.log(others / m[i]!);
    }
    return 2 * lost;
  },
  start: (y, m) => Math.log((y + 0.5) / (m - y + 0.5)),
  most: (m) => m,
};
