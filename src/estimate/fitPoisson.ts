import type { Coefficient } from "./Coefficient.js";
import { countOutcome } from "./design/countOutcome.js";
import { numberColumn } from "./design/numberColumn.js";
import { designMatrix } from "./designMatrix.js";
import { logFactorial } from "./numeric/logFactorial.js";
import { poissonFamily } from "./numeric/poissonFamily.js";
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
export interface PoissonOptions {
  readonly rows: readonly object[];
  /** Column of counts of events. */
  readonly outcome: string;
  readonly terms: readonly Term[];
  /** Column of time at risk, horse-days for instance, whose logarithm is the offset; 0 leaves the row out. Without it each row is one unit. */
  readonly time?: string;
  /** Column added to the log rate as it stands: a logarithm already taken. */
  readonly offset?: string;
  /** Column, or columns taken together, whose values mark rows that belong together; makes the errors cluster-robust. */
  readonly cluster?: string | readonly string[];
  /** Column of frequency weights: a row counts that many times. 0 leaves the row out. */
  readonly weights?: string;
  /** Profile likelihood limits, the default without clusters, or Wald limits, the only kind with clusters. */
  readonly interval?: IntervalKind;
  /** Confidence level; 0.95 when left out. */
  readonly level?: number;
}

/** A coefficient of a Poisson regression, a log rate ratio, with the rate ratio itself. */
export interface RateCoefficient extends Coefficient {
  readonly rateRatio: RatioInterval;
}

/** A Poisson regression. */
export interface PoissonFit extends RegressionFit<RateCoefficient> {
  readonly events: number;
  /** Sum of the time at risk; null when no time was given. */
  readonly time: number | null;
  /** Residual degrees of freedom: rows used less coefficients. */
  readonly df: number;
  readonly deviance: number;
  /** Deviance of the fit with the intercept (and offset) alone. */
  readonly nullDeviance: number;
  /** Full Poisson log likelihood, constants included. */
  readonly logLik: number;
  readonly aic: number;
  /** Sum of squared Pearson residuals over `df`; null when `df` is 0. Well above 1 the model-based errors are too small. */
  readonly dispersion: number | null;
  readonly iterations: number;
  /** Number of clusters; null without. */
  readonly clusters: number | null;
}

/**
 * Poisson regression of counts, log link, by maximum likelihood (iteratively reweighted least squares on QR).
 *
 * Errors of the estimates and limits as in `fitLogistic`. Rows with something missing are left out and counted.
 *
 * Errors thrown: those of `designMatrix`; `not_a_count` for an outcome that is negative or not whole; `no_variation` when there is no
 * event at all; `separation`, naming the columns, when no event occurs where a term says so and its rate ratio would be 0; `too_few`
 * for a single cluster; `out_of_range` for the level, negative time or profile limits together with clusters; `not_converged`.
 *
 * Source: McCullagh P, Nelder JA, Generalized Linear Models.
 */
export function fitPoisson(options: PoissonOptions): PoissonFit {
  const { rows, outcome, terms, time, offset, cluster, weights, interval } = options;
  const level = requireLevel(options.level ?? 0.95);
  const by = [cluster ?? []].flat();
  const design = designMatrix(rows, terms, {
    outcome,
    also: [...by, ...[offset ?? []].flat()],
    positive: [time ?? [], weights ?? []].flat(),
  });
  const { names, n, used, dropped } = design;
  const counts = countOutcome(rows, used, outcome);
  const weight = weights === undefined ? new Float64Array(n).fill(1) : numberColumn(rows, used, weights);
  const atRisk = time === undefined ? null : numberColumn(rows, used, time);
  const known = offset === undefined ? new Float64Array(n) : numberColumn(rows, used, offset);
  const groups = clustersOf(rows, used, by);
  const y = counts.map((value, i) => value * weight[i]!);
  const shift = known.map((value, i) => value + Math.log(atRisk?.[i] ?? 1));
  const fit = generalisedLinear(design, { family: poissonFamily, y, m: weight, offset: shift }, outcome, groups);
  const { coefficients, words, notes } = likelihoodTable(names, fit, { level, interval, groups, by });
  const df = n - names.length;
  const logLik = counts.reduce((sum, value, i) => sum + weight[i]! * exactLogLik(value), 0) - fit.deviance / 2;
  const per = time === undefined ? "" : ` per ${time}`;
  return {
    coefficients: ratioCoefficients(coefficients, "rateRatio"),
    covariance: fit.covariance,
    n,
    dropped,
    level,
    method: `${weights === undefined ? "Poisson" : "Weighted Poisson"} regression of ${outcome}${per} on ${termWords(names)}; ${words}`,
    notes,
    events: counts.reduce((sum, value) => sum + value, 0),
    time: atRisk === null ? null : atRisk.reduce((sum, value) => sum + value, 0),
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

/** Poisson log likelihood of a count at its own mean. */
function exactLogLik(count: number): number {
  return count === 0 ? 0 : count * Math.log(count) - count - logFactorial(count);
}
