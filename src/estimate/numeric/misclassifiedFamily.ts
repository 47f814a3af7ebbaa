import type { ClassifiedOutcome } from "../ClassifiedOutcome.js";
import type { Family } from "./Family.js";

/**
 * Binomial totals of cases as called, with a logit link to the chance of a true case: called with chance
 * 1 - specificity + (sensitivity + specificity - 1) x true chance. Not canonical: the weight is the expected information m q'^2 / (q(1 - q)), the
 * residual the slope of the log-likelihood in the linear predictor.
 */
export function misclassifiedFamily({ sensitivity, specificity }: ClassifiedOutcome): Family {
  const informed = sensitivity + specificity - 1;
  const truth = (eta: number) => 1 / (1 + Math.exp(-eta));
  const slope = (eta: number) => {
    const small = Math.exp(-Math.abs(eta));
    return (informed * small) / (1 + small) ** 2;
  };
  const called = (eta: number) => 1 - specificity + informed * truth(eta);
  const clear = (eta: number) => 1 - sensitivity + informed * truth(-eta);
  return {
    mean: called,
    variance: slope,
    evaluate: (y, m, eta, weights, residuals) => {
      let lost = 0;
      for (let i = 0; i < eta.length; i += 1) {
        const [cases, others] = [y[i]!, m[i]! - y[i]!];
        const [q, rest, rise] = [called(eta[i]!), clear(eta[i]!), slope(eta[i]!)];
        weights[i] = (m[i]! * rise * rise) / (q * rest);
        residuals[i] = (cases / q - others / rest) * rise;
        if (cases > 0) lost -= cases * Math.log((q * m[i]!) / cases);
        if (others > 0) lost -= others * Math.log((rest * m[i]!) / others);
      }
      return 2 * lost;
    },
    start: (y, m) => Math.log((y + 0.5) / (m - y + 0.5)),
    most: (m) => m,
  };
}
