import type { ClassifiedOutcome } from "./ClassifiedOutcome.js";
import { binomialOutcome } from "./design/binomialOutcome.js";
import { designMatrix } from "./designMatrix.js";
import { EstimateError } from "./EstimateError.js";
import type { LogisticOptions, OddsCoefficient } from "./fitLogistic.js";
import { misclassifiedFamily } from "./numeric/misclassifiedFamily.js";
import { requireClassification } from "./numeric/requireClassification.js";
import { requireLevel } from "./numeric/requireLevel.js";
import { clustersOf } from "./regression/clustersOf.js";
import { generalisedLinear } from "./regression/generalisedLinear.js";
import { likelihoodTable } from "./regression/likelihoodTable.js";
import { ratioCoefficients } from "./regression/ratioCoefficients.js";
import { termWords } from "./regression/termWords.js";
import type { RegressionFit } from "./RegressionFit.js";

/** A logistic regression of the true outcome behind the one recorded. */
export interface MisclassifiedFit extends RegressionFit<OddsCoefficient>, ClassifiedOutcome {
  readonly cases: number;
  /** Number of clusters; null without. */
  readonly clusters: number | null;
  readonly deviance: number;
}

/**
 * Logistic regression of the true state of a foot when the examination misses some cases and calls some clear feet cases, equally whatever
 * the terms: what the odds ratios would be with these values, which are stated and not estimated.
 *
 * Method: maximum likelihood with the chance of being called a case 1 - specificity + (sensitivity + specificity - 1) x the logistic curve, by Fisher
 * scoring. Errors from the expected information, Wald limits and z; or, with `cluster`, the sandwich times G/(G-1), by t with G - 1 degrees of
 * freedom. Population-averaged, as `fitGee` is. With sensitivity and specificity 1 it is `fitLogistic`. Rows with something missing are left out and counted.
 *
 * Errors thrown: those of `fitLogistic`; `out_of_range` for values outside 0 to 1, a sum of 1 or less, or values that cannot have produced the share of cases
 * recorded; `not_converged` when they cannot have produced it for some values of the terms.
 *
 * Source: Magder LS, Hughes JP (1997) Am J Epidemiol 146:195-203.
 */
export function fitMisclassifiedLogistic(
  options: Pick<LogisticOptions, "rows" | "outcome" | "terms" | "cluster" | "level"> & ClassifiedOutcome,
): MisclassifiedFit {
  const { rows, outcome, terms, cluster, sensitivity, specificity } = options;
  const level = requireLevel(options.level ?? 0.95);
  requireClassification({ sensitivity, specificity });
  const by = [cluster ?? []].flat();
  const single = typeof outcome === "string";
  const name = single ? outcome : outcome.cases;
  const design = designMatrix(rows, terms, { outcome: name, also: by, positive: single ? [] : [outcome.n] });
  const { names, used, dropped } = design;
  const { cases, n } = binomialOutcome(rows, used, outcome);
  const total = (values: Float64Array) => values.reduce((sum, value) => sum + value, 0);
  const share = total(cases) / total(n);
  if (share <= 1 - specificity || share >= sensitivity) {
    throw new EstimateError(
      "out_of_range",
      `${(100 * share).toFixed(1)} % are recorded as cases, which sensitivity ${sensitivity} and specificity ${specificity} cannot bring about.`,
      `Give a specificity above ${(1 - share).toFixed(4)} and a sensitivity above ${share.toFixed(4)}.`,
    );
  }
  const groups = clustersOf(rows, used, by);
  const family = misclassifiedFamily({ sensitivity, specificity });
  const fit = generalisedLinear(design, { family, y: cases, m: n }, name, groups);
  const { coefficients, words, notes } = likelihoodTable(names, fit, {
    level,
    interval: "wald",
    groups,
    by,
  });
  return {
    coefficients: ratioCoefficients(coefficients, "oddsRatio"),
    covariance: fit.covariance,
    n: total(n),
    cases: total(cases),
    dropped,
    level,
    method: `Logistic regression of the true ${name} on ${termWords(names)}, sensitivity ${sensitivity}, specificity ${specificity}; ${words}`,
    notes,
    clusters: groups?.count ?? null,
    deviance: fit.deviance,
    sensitivity,
    specificity,
  };
}
