import { Matrix } from "ml-matrix";
import type { OddsCoefficient } from "./fitLogistic.js";
import { binomialOutcome, type BinomialColumns } from "./design/binomialOutcome.js";
import { numberColumn } from "./design/numberColumn.js";
import { designMatrix } from "./designMatrix.js";
import { EstimateError } from "./EstimateError.js";
import { binomialFamily } from "./numeric/binomialFamily.js";
import type { ClusteredBinomial } from "./numeric/ClusteredBinomial.js";
import { clusteredCells } from "./numeric/clusteredCells.js";
import { irls } from "./numeric/irls.js";
import { requireLevel } from "./numeric/requireLevel.js";
import { requireOneOf } from "./numeric/requireOneOf.js";
import { sandwich } from "./numeric/sandwich.js";
import { scoreCovariance } from "./numeric/scoreCovariance.js";
import { standardised } from "./numeric/standardised.js";
import { unleveredScores } from "./numeric/unleveredScores.js";
import { clusterNotes } from "./regression/clusterNotes.js";
import { clustersOf } from "./regression/clustersOf.js";
import { coefficientTable } from "./regression/coefficientTable.js";
import { geeParts } from "./regression/geeParts.js";
import { ratioCoefficients } from "./regression/ratioCoefficients.js";
import { separationError } from "./regression/separationError.js";
import { termWords } from "./regression/termWords.js";
import type { RegressionFit } from "./RegressionFit.js";
import type { Term } from "./Term.js";

/** What to regress on what. */
export interface GeeOptions {
  readonly rows: readonly object[];
  /** Column of booleans or 0 and 1; or columns of cases and of numbers examined, each foot of them a member of the cluster. */
  readonly outcome: BinomialColumns;
  readonly terms: readonly Term[];
  /** Column, or columns taken together, whose values mark rows that belong together: `["yard", "horse"]` for horses named within yards. */
  readonly cluster: string | readonly string[];
  /** How feet of a cluster are taken to hang together: all pairs alike (the default), or not at all. */
  readonly correlation?: "exchangeable" | "independence";
  /**
   * Dispersion phi: held at the mean squared Pearson residual of the independence fit (`independence`, the default, as R geepack does
   * with scale.fix = TRUE), `estimated` anew at each step, or held at a number.
   */
  readonly phi?: "independence" | "estimated" | number;
  /**
   * What the means behind alpha and phi are over: `all` pairs and feet (the default, as in R geepack), or `less-coefficients`, the number
   * of coefficients taken off both, as Liang and Zeger write it.
   */
  readonly divisor?: "all" | "less-coefficients";
  /** Column of weights dividing a row's variance. 0 leaves the row out. */
  readonly weights?: string;
  /**
   * What is done about robust errors coming out too small with few clusters: nothing (`none`, the default; tests by z), the factor
   * G/(G-p) (`clusters`), or each cluster's leverage taken out (`mancl-derouen`); the latter two test by t with G - p.
   */
  readonly correction?: "none" | "clusters" | "mancl-derouen";
  /** Confidence level; 0.95 when left out. */
  readonly level?: number;
}

/** A coefficient with its error were the working correlation true. */
export interface GeeCoefficient extends OddsCoefficient {
  /** Model-based standard error, beside the robust one in `se`. */
  readonly modelSe: number;
}

/** A logistic regression by generalised estimating equations. */
export interface GeeFit extends RegressionFit<GeeCoefficient> {
  /** Covariance of the estimates were the working correlation true. */
  readonly modelCovariance: readonly (readonly number[])[];
  /** Working correlation of two feet of a cluster; null under independence or when no cluster has two feet. */
  readonly alpha: number | null;
  readonly phi: number;
  readonly cases: number;
  readonly clusters: number;
  /** Feet in the smallest and the largest cluster. */
  readonly clusterSizes: readonly [number, number];
  readonly iterations: number;
}

/**
 * Population-averaged logistic regression of clustered feet by generalised estimating equations, with robust (sandwich) errors that
 * hold whatever the true correlation, and model-based ones beside them.
 *
 * Working correlation alpha: sum of w_j w_k e_j e_k over the pairs of feet within clusters over the sum of w_j w_k, over phi; e the
 * Pearson residual, w the weight. Phi estimated is the weighted mean of e^2. Nothing is taken off for the number of coefficients
 * unless `divisor` says so. A correlation that falls with the distance in time (AR(1)) is not offered: feet of a horse have no order.
 * Rows with something missing are left out and counted.
 *
 * Errors thrown: those of `designMatrix` and of the outcome as in `fitLogistic`; `separation`; `too_few` for a single cluster, or for
 * a correction with no more clusters than coefficients or with a cluster that alone decides a coefficient; `out_of_range` for the
 * level, for phi, and when alpha leaves what a correlation can be; `not_converged`.
 *
 * Sources: Liang KY, Zeger SL (1986) Biometrika 73:13-22; Mancl LA, DeRouen TA (2001) Biometrics 57:126-134.
 */
export function fitGee(options: GeeOptions): GeeFit {
  const { rows, outcome, terms, cluster, correlation = "exchangeable", phi: scale = "independence", weights } = options;
  const { correction = "none", divisor = "all" } = options;
  const level = requireLevel(options.level ?? 0.95);
  requireOneOf("correlation", correlation, ["exchangeable", "independence"]);
  requireOneOf("divisor", divisor, ["all", "less-coefficients"]);
  requireOneOf("correction", correction, ["none", "clusters", "mancl-derouen"]);
  if (typeof scale !== "number") requireOneOf("dispersion", scale, ["independence", "estimated"]);
  const by = [cluster].flat();
  const single = typeof outcome === "string";
  const name = single ? outcome : outcome.cases;
  const design = designMatrix(rows, terms, {
    outcome: name,
    also: by,
    positive: [single ? [] : outcome.n, weights ?? []].flat(),
  });
  const { names, used, dropped } = design;
  const { cases, n } = binomialOutcome(rows, used, outcome);
  const weight = weights === undefined ? null : numberColumn(rows, used, weights);
  const groups = clustersOf(rows, used, by);
  if (groups === null) throw new EstimateError("empty", "No column of clusters was named.", "Name at least one.");
  const [G, p] = [groups.count, names.length];
  requireChoices(scale, correction, G, p);
  const given = clusteredCells({ columns: design.columns, cases, n, weights: weight, groups });
  const { columns, transform } = standardised(given.columns, true);
  const data = { ...given, columns };
  const start = irls({ family: binomialFamily, ...pooled(data) });
  if (start.separation !== null) {
    const shares = cases.map((value, i) => value / n[i]!);
    throw separationError(names, design.columns, start.separation, shares, name);
  }
  const { estimate, equations, alpha, phi, paired, iterations } = geeParts(
    data,
    start.estimate,
    correlation,
    scale,
    divisor === "all" ? 0 : p,
  );
  const freed = correction === "mancl-derouen" ? unleveredScores(equations) : equations.scores;
  const scores = freed.map((score) => score.map((value, c) => value * Math.sqrt(data.copies[c]!)));
  const robust = scoreCovariance(transform.mmul(equations.inverse), scores).mul(correction === "clusters" ? G / (G - p) : 1);
  const [covariance, modelCovariance] = [robust, sandwich(transform, equations.inverse).mul(phi)].map((matrix) =>
    matrix.to2DArray(),
  ) as [number[][], number[][]];
  const df = correction === "none" ? null : G - p;
  const estimates = transform.mmul(Matrix.columnVector(estimate)).to1DArray();
  const table = ratioCoefficients(coefficientTable(names, estimates, covariance, level, df), "oddsRatio");
  const total = (values: Float64Array) => values.reduce((sum, value) => sum + value, 0);
  return {
    coefficients: table.map((row, j) => ({ ...row, modelSe: Math.sqrt(modelCovariance[j]![j]!) })),
    covariance,
    modelCovariance,
    n: total(n),
    cases: total(cases),
    dropped,
    level,
    method: [
      `Generalised estimating equations, logistic, of ${name} on ${termWords(names)}`,
      `${correlation} within ${G} clusters of ${by.join(", ")}`,
      `robust errors${{ none: "", clusters: " times the root of G/(G-p)", "mancl-derouen": " with the Mancl-DeRouen correction" }[correction]}`,
      df === null ? "Wald limits" : `limits by t with ${df} degrees of freedom`,
    ].join("; "),
    notes: [
      ...clusterNotes(G, p).filter(() => correction === "none"),
      ...(correlation === "exchangeable" && !paired ? ["No cluster has two feet, so there is no correlation to estimate."] : []),
    ],
    alpha: correlation === "exchangeable" && paired ? alpha : null,
    phi,
    clusters: G,
    clusterSizes: [
      data.sizes.reduce((least, size) => Math.min(least, size)),
      data.sizes.reduce((most, size) => Math.max(most, size)),
    ],
    iterations,
  };
}

/** The cells of all clusters as totals of a regression that takes feet for independent. */
function pooled({ columns, cases, n, weights, groups, copies }: ClusteredBinomial) {
  const times = weights.map((weight, i) => weight * copies[groups.index[i]!]!);
  return { columns, y: cases.map((value, i) => value * times[i]!), m: n.map((value, i) => value * times[i]!) };
}

function requireChoices(scale: GeeOptions["phi"], correction: string, clusters: number, coefficients: number): void {
  if (typeof scale === "number" && !(scale > 0 && Number.isFinite(scale))) {
    throw new EstimateError(
      "out_of_range",
      `The dispersion phi is ${scale}.`,
      "Give a positive number, 1 for plain binomial variance.",
    );
  }
  if (correction !== "none" && clusters <= coefficients) {
    throw new EstimateError(
      "too_few",
      `There are ${clusters} clusters for ${coefficients} coefficients.`,
      "A correction for few clusters needs more clusters than coefficients: use fewer terms.",
    );
  }
}
