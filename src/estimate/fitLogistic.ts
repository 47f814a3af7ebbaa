import type { Coefficient } from "./Coefficient.js";
import { binomialOutcome, type BinomialColumns } from "./design/binomialOutcome.js";
import { numberColumn } from "./design/numberColumn.js";
import { designMatrix } from "./designMatrix.js";
import { binomialFamily } from "./numeric/binomialFamily.js";
import { logChoose } from "./numeric/logChoose.js";
import { requireLevel } from "./numeric/requireLevel.js";
import type { RatioInterval } from "./RatioInterval.js";
import { clustersOf } from "./regression/clustersOf.js";
import { generalisedLinear } from "./regression/generalisedLinear.js";
import { likelihoodTable, type IntervalKind } from "./regression/likelihoodTable.js";
import { ratioCoefficients } from "./regression/ratioCoefficients.js";
import { termWords } from "./regression/termWords.js";
import type { RegressionFit } from "./RegressionFit.js";
import type { Term } from "./Term.js";

/** What to regress on what. */
export interface LogisticOptions {
  readonly rows: readonly object[];
  /** Column of booleans or 0 and 1; or columns of cases and of numbers examined. A row in which nothing was examined is left out. */
  readonly outcome: BinomialColumns;
  readonly terms: readonly Term[];
  /** Column, or columns taken together, whose values mark rows that belong together; makes the errors cluster-robust. */
  readonly cluster?: string | readonly string[];
  /** Column added to the log odds as it stands. */
  readonly offset?: string;
  /** Column of frequency weights: a row counts that many times. 0 leaves the row out. */
  readonly weights?: string;
  /** Profile likelihood limits, the default without clusters, or Wald limits, the only kind with clusters. */
  readonly interval?: IntervalKind;
  /** Confidence level; 0.95 when left out. */
  readonly level?: number;
}

/** A coefficient of a logistic regression, a log odds ratio, with the odds ratio itself. */
export interface OddsCoefficient extends Coefficient {
  readonly oddsRatio: RatioInterval;
}

/** A logistic regression. */
export interface LogisticFit extends RegressionFit<OddsCoefficient> {
  /** Rows used; with a single outcome the same as `n`, which counts what was examined. */
  readonly rowsUsed: number;
  /** Cases among the n. */
  readonly cases: number;
  /** Residual degrees of freedom: rows used less coefficients. */
  readonly df: number;
  readonly deviance: number;
  /** Deviance of the fit with the intercept (and offset) alone. */
  readonly nullDeviance: number;
  /** Full binomial log likelihood, constants included. */
  readonly logLik: number;
  readonly aic: number;
  /** Sum of squared Pearson residuals over `df`; null when `df` is 0. */
  readonly dispersion: number | null;
  readonly iterations: number;
  /** Number of clusters; null without. */
  readonly clusters: number | null;
}

/**
 * Logistic regression by maximum likelihood (iteratively reweighted least squares on QR).
 *
 * Errors of the estimates: from the information; or, with `cluster`, the sandwich times G/(G-1), limits and tests by t with G - 1
 * degrees of freedom, for G clusters. Without clusters tests are Wald tests (z) and limits profile likelihood or Wald. Rows with
 * something missing are left out and counted.
 *
 * Errors thrown: those of `designMatrix`; `no_variation` when all rows have the same outcome; `separation`, naming the columns, when
 * terms tell the outcome without error so that an estimate would be infinite; `too_few` for a single cluster; `out_of_range` for an
 * outcome that is not 0 or 1, more cases than examined, the level, or profile limits together with clusters; `not_a_count`;
 * `not_converged`.
 *
 * Sources: McCullagh P, Nelder JA, Generalized Linear Models; Liang KY, Zeger SL (1986) Biometrika 73:13-22 for the sandwich;
 * Venzon DJ, Moolgavkar SH (1988) Applied Statistics 37:87-94 for profile limits.
 */
export function fitLogistic(options: LogisticOptions): LogisticFit {
  const { rows, outcome, terms, cluster, offset, weights, interval } = options;
  const level = requireLevel(options.level ?? 0.95);
  const by = [cluster ?? []].flat();
  const single = typeof outcome === "string";
  const name = single ? outcome : outcome.cases;
  const design = designMatrix(rows, terms, {
    outcome: name,
    also: [...by, ...[offset ?? []].flat()],
    positive: [single ? [] : outcome.n, weights ?? []].flat(),
  });
  const { names, used, dropped } = design;
  const { cases, n } = binomialOutcome(rows, used, outcome);
  const weight = weights === undefined ? null : numberColumn(rows, used, weights);
  const groups = clustersOf(rows, used, by);
  const y = cases.map((value, i) => value * (weight?.[i] ?? 1));
  const m = n.map((value, i) => value * (weight?.[i] ?? 1));
  const shift = offset === undefined ? undefined : numberColumn(rows, used, offset);
  const fit = generalisedLinear(design, { family: binomialFamily, y, m, offset: shift }, name, groups);
  const { coefficients, words, notes } = likelihoodTable(names, fit, { level, interval, groups, by });
  const df = used.length - names.length;
  // Twice the log likelihood of a fit exact in every row, less the deviance, is twice that of this one.
  const exact = cases.reduce((sum, k, i) => sum + (weight?.[i] ?? 1) * exactLogLik(k, n[i]!), 0);
  const logLik = exact - fit.deviance / 2;
  const total = (values: Float64Array) => values.reduce((sum, value) => sum + value, 0);
  return {
    coefficients: ratioCoefficients(coefficients, "oddsRatio"),
    covariance: fit.covariance,
    n: total(n),
    rowsUsed: used.length,
    cases: total(cases),
    dropped,
    level,
    method: `${weights === undefined ? "Logistic" : "Weighted logistic"} regression of ${name} on ${termWords(names)}; ${words}`,
    notes,
    df,
    deviance: fit.deviance,
    nullDeviance: fit.nullDeviance,
    logLik,
    aic: -2 * logLik + 2 * names.length,
    dispersion: df === 0 ? null : fit.pearson / df,
    iterations: fit.iterations,
    clusters: groups?.count ?? null,
  };
}

/** Binomial log likelihood of k cases of n at the proportion k / n. */
function exactLogLik(k: number, n: number): number {
  if (k === 0 || k === n) return 0;
  return logChoose(n, k) + k * Math.log(k / n) + (n - k) * Math.log((n - k) / n);
}
