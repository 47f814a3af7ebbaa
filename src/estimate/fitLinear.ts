import { numberColumn } from "./design/numberColumn.js";
import { designMatrix } from "./designMatrix.js";
import { EstimateError } from "./EstimateError.js";
import { fUpper } from "./numeric/fUpper.js";
import { requireLevel } from "./numeric/requireLevel.js";
import { clusterNotes } from "./regression/clusterNotes.js";
import { clustersOf } from "./regression/clustersOf.js";
import { coefficientTable } from "./regression/coefficientTable.js";
import { linearParts } from "./regression/linearParts.js";
import { termWords } from "./regression/termWords.js";
import type { RegressionFit } from "./RegressionFit.js";
import type { Term } from "./Term.js";

/** What to regress on what. */
export interface LinearOptions {
  readonly rows: readonly object[];
  /** Column of numbers. */
  readonly outcome: string;
  readonly terms: readonly Term[];
  /** Column, or columns taken together, whose values mark rows that belong together; makes the errors cluster-robust. */
  readonly cluster?: string | readonly string[];
  /** Column of precision weights: the variance of a row is the residual variance over its weight. 0 leaves the row out. */
  readonly weights?: string;
  /** False fits a line through the origin. */
  readonly intercept?: boolean;
  /** Confidence level; 0.95 when left out. */
  readonly level?: number;
}

/** A linear regression. */
export interface LinearFit extends RegressionFit {
  /** Residual degrees of freedom, n less coefficients. */
  readonly df: number;
  /** Root of the (weighted) residual sum of squares over `df`. */
  readonly residualSd: number;
  /** Share of the (weighted) sum of squares about the mean that is explained; about zero without an intercept. */
  readonly rSquared: number;
  /** Overall test that all terms are without effect, from model-based errors; null without terms or with an exact fit. */
  readonly f: { readonly statistic: number; readonly df: readonly [number, number]; readonly p: number } | null;
  /** Residual sum of squares. */
  readonly deviance: number;
  /** Sum of squares about the mean; about zero without an intercept. */
  readonly nullDeviance: number;
  /** Of the normal model at its maximum; null with an exact fit, where it has none. */
  readonly logLik: number | null;
  /** -2 logLik + 2 (coefficients + 1); null with logLik. */
  readonly aic: number | null;
  /** Number of clusters; null without. */
  readonly clusters: number | null;
}

/**
 * Linear regression by least squares, solved by QR of the centred and scaled design.
 *
 * Errors of the estimates: from the residual variance, limits by t with n - p degrees of freedom; or, with `cluster`, the sandwich
 * (X'X)^-1 (sum over clusters of X'r r'X) (X'X)^-1 times G/(G-1) (n-1)/(n-p), limits by t with G - 1, for G clusters and p
 * coefficients. Rows with something missing are left out and counted.
 *
 * Errors thrown: those of `designMatrix`; `no_variation` for an outcome that is the same in every row; `too_few` when no degrees of
 * freedom are left or all rows are one cluster; `out_of_range` for the level.
 *
 * Source: Liang KY, Zeger SL (1986) Biometrika 73:13-22 for the sandwich; the factor is common practice.
 */
export function fitLinear(options: LinearOptions): LinearFit {
  const { rows, outcome, terms, cluster, weights, intercept = true } = options;
  const level = requireLevel(options.level ?? 0.95);
  const by = [cluster ?? []].flat();
  const { names, columns, n, used, dropped } = designMatrix(rows, terms, {
    outcome,
    also: by,
    positive: [weights ?? []].flat(),
    intercept,
  });
  const [p, df] = [names.length, n - names.length];
  const y = numberColumn(rows, used, outcome);
  const weight = weights === undefined ? new Float64Array(n).fill(1) : numberColumn(rows, used, weights);
  requireSpread(outcome, y, df);
  const groups = clustersOf(rows, used, by);
  const { estimates, covariance, residual, about, explained } = linearParts(columns, intercept, y, weight, groups);
  const exact = residual <= 1e-26 * about;
  const logWeights = weight.reduce((sum, value) => sum + Math.log(value), 0);
  const logLik = exact ? null : (logWeights - n * (Math.log((2 * Math.PI * residual) / n) + 1)) / 2;
  const freedom = groups === null ? df : groups.count - 1;
  return {
    coefficients: coefficientTable(names, estimates, covariance, level, freedom),
    covariance,
    n,
    dropped,
    level,
    method: [
      `${weights === undefined ? "Least squares" : "Weighted least squares"} of ${outcome} on ${termWords(names)}`,
      groups === null
        ? "errors from the residual variance"
        : `cluster-robust errors over ${groups.count} clusters of ${by.join(", ")}, factor G/(G-1) x (n-1)/(n-p)`,
      `limits by t with ${freedom} degrees of freedom`,
    ].join("; "),
    notes: [
      ...(groups === null ? [] : clusterNotes(groups.count, p)),
      ...(exact ? ["The terms tell the outcome exactly: errors and tests say nothing."] : []),
    ],
    df,
    residualSd: Math.sqrt(residual / df),
    rSquared: explained / (explained + residual),
    f: exact ? null : overallTest(explained, residual, p - (intercept ? 1 : 0), df),
    deviance: residual,
    nullDeviance: about,
    logLik,
    aic: logLik === null ? null : -2 * logLik + 2 * (p + 1),
    clusters: groups?.count ?? null,
  };
}

function requireSpread(outcome: string, values: Float64Array, df: number): void {
  if (df === 0) {
    throw new EstimateError("too_few", "There are as many coefficients as usable rows.", "Use fewer terms or more rows.");
  }
  if (values.some((value) => value !== values[0])) return;
  throw new EstimateError(
    "no_variation",
    `The outcome "${outcome}" is ${values[0]!} in every row used.`,
    "There is nothing to explain.",
  );
}

function overallTest(explained: number, residual: number, slopes: number, df: number): LinearFit["f"] {
  if (slopes === 0) return null;
  const statistic = explained / slopes / (residual / df);
  return { statistic, df: [slopes, df], p: fUpper(statistic, slopes, df) };
}
