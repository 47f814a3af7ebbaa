import { EigenvalueDecomposition, inverse, Matrix } from "ml-matrix";
import type { ChiSquareTest } from "./ChiSquareTest.js";
import type { Coefficient } from "./Coefficient.js";
import { numberColumn } from "./design/numberColumn.js";
import { requireTerms } from "./design/requireTerms.js";
import { designMatrix } from "./designMatrix.js";
import { EstimateError } from "./EstimateError.js";
import { chiSquareTest } from "./numeric/chiSquareTest.js";
import { clusterSums } from "./numeric/clusterSums.js";
import { coxLikelihood, type CoxData } from "./numeric/coxLikelihood.js";
import { coxResiduals } from "./numeric/coxResiduals.js";
import { linearPredictor } from "./numeric/linearPredictor.js";
import { requireLevel } from "./numeric/requireLevel.js";
import { requireOneOf } from "./numeric/requireOneOf.js";
import { scoreCovariance } from "./numeric/scoreCovariance.js";
import { standardised } from "./numeric/standardised.js";
import type { RatioInterval } from "./RatioInterval.js";
import { clusterNotes } from "./regression/clusterNotes.js";
import { clustersOf } from "./regression/clustersOf.js";
import { coefficientTable } from "./regression/coefficientTable.js";
import { coxSteps } from "./regression/coxSteps.js";
import { ratioCoefficients } from "./regression/ratioCoefficients.js";
import { termWords } from "./regression/termWords.js";
import type { RegressionFit } from "./RegressionFit.js";
import type { Term } from "./Term.js";

/** What to regress on what. */
export interface CoxOptions {
  readonly rows: readonly object[];
  /** Column of the time watched, not negative, and column of booleans or 0 and 1: whether the event ended the watch. */
  readonly outcome: { readonly time: string; readonly event: string };
  readonly terms: readonly Term[];
  /** Column, or columns taken together, whose values mark rows that belong together; makes the errors cluster-robust. */
  readonly cluster?: string | readonly string[];
  /** What is done about events at the same time: Efron's approximation, the default, or Breslow's. */
  readonly ties?: "efron" | "breslow";
  /** Confidence level; 0.95 when left out. */
  readonly level?: number;
}

/** A coefficient of a proportional hazards regression, a log hazard ratio, with the hazard ratio itself. */
export interface HazardCoefficient extends Coefficient {
  readonly hazardRatio: RatioInterval;
}

/** A proportional hazards regression. `coefficients` has no intercept: the model has none. */
export interface CoxFit extends RegressionFit<HazardCoefficient> {
  readonly events: number;
  /** Partial log likelihood at the estimates, and with all coefficients 0. */
  readonly logLik: number;
  readonly nullLogLik: number;
  readonly aic: number;
  /** Tests that all coefficients are 0; both take rows for independent. */
  readonly likelihoodRatio: ChiSquareTest;
  readonly scoreTest: ChiSquareTest;
  readonly iterations: number;
  /** Number of clusters; null without. */
  readonly clusters: number | null;
}

/**
 * Proportional hazards regression of the time to an event by Cox's partial likelihood: hazard ratios, whatever the hazard is over time.
 * That the ratios do not change over time is taken for granted; look at `kaplanMeier` curves by group.
 *
 * Errors of the estimates: from the information, tests by z; or, with `cluster`, the sandwich of the score residuals times G/(G-1),
 * limits and tests by t with G - 1 degrees of freedom, for G clusters. Rows with something missing are left out and counted.
 *
 * Errors thrown: those of `designMatrix`; `empty` for no term; `no_variation` when no event happened; `collinear` when a term does not
 * vary among those at risk at any event; `separation` when the events always fall on the highest or lowest of those at risk, so that
 * a ratio would be infinite; `too_few` for a single cluster; `out_of_range` for a negative time, an event that is not 0 or 1, the
 * level or the ties; `not_converged`.
 *
 * Source: Cox DR (1972) J R Stat Soc B 34:187-220; Efron B (1977) J Am Stat Assoc 72:557-565; Breslow N (1974) Biometrics 30:89-99; Lin
 * DY, Wei LJ (1989) J Am Stat Assoc 84:1074-1078 for the sandwich.
 */
export function fitCox(options: CoxOptions): CoxFit {
  const { rows, outcome, terms, cluster, ties = "efron" } = options;
  const level = requireLevel(options.level ?? 0.95);
  requireAsked(terms, ties);
  const by = [cluster ?? []].flat();
  const design = designMatrix(rows, terms, { outcome: outcome.event, also: [outcome.time, ...by] });
  const { n, used, dropped } = design;
  const names = design.names.slice(1);
  const groups = clustersOf(rows, used, by);
  const times = requireTimes(numberColumn(rows, used, outcome.time), used, outcome.time);
  const happened = requireEvents(numberColumn(rows, used, outcome.event), used, outcome.event);
  const order = Int32Array.from(times.keys()).sort((a, b) => times[b]! - times[a]!);
  const { columns, transform } = standardised(design.columns, true);
  const data: CoxData = {
    columns: columns.slice(1).map((column) => column.map((_, i) => column[order[i]!]!)),
    events: Uint8Array.from(order, (row) => happened[row]!),
    starts: [...Array.from(order.keys()).filter((i) => i === 0 || times[order[i]!] !== times[order[i - 1]!]), n],
    ties,
  };
  const start = coxLikelihood(data, new Float64Array(n));
  requireInformed(start.information, names);
  const { estimate, fit, iterations } = coxSteps(data, start, names, outcome.event);
  const scales = names.map((_, j) => transform.get(j + 1, j + 1));
  const bread = Matrix.diag(scales).mmul(inverse(fit.information));
  const eta = linearPredictor(data.columns, estimate);
  const covariance =
    groups === null
      ? bread.mmul(Matrix.diag(scales))
      : scoreCovariance(
          bread,
          clusterSums(coxResiduals(data, eta, fit.ties), new Float64Array(n).fill(1), {
            index: groups.index.map((_, i) => groups.index[order[i]!]!),
            count: groups.count,
          }),
        ).mul(groups.count / (groups.count - 1));
  const matrix = covariance.to2DArray();
  const estimates = scales.map((scale, j) => scale * estimate[j]!);
  const df = groups === null ? null : groups.count - 1;
  const score = Matrix.columnVector(start.score);
  const test = (statistic: number) => chiSquareTest(Math.max(0, statistic), names.length);
  return {
    coefficients: ratioCoefficients(coefficientTable(names, estimates, matrix, level, df), "hazardRatio"),
    covariance: matrix,
    n,
    dropped,
    level,
    method: [
      `Proportional hazards regression of the time to ${outcome.event} on ${termWords(names)}`,
      `${{ efron: "Efron's", breslow: "Breslow's" }[ties]} ties`,
      groups === null
        ? "errors from the information; Wald limits"
        : `cluster-robust errors over ${groups.count} clusters of ${by.join(", ")}, factor G/(G-1); limits by t with ${groups.count - 1} degrees of freedom`,
    ].join("; "),
    notes: groups === null ? [] : clusterNotes(groups.count, names.length),
    events: happened.reduce((sum, value) => sum + value, 0),
    logLik: fit.logLik,
    nullLogLik: start.logLik,
    aic: -2 * fit.logLik + 2 * names.length,
    likelihoodRatio: test(2 * (fit.logLik - start.logLik)),
    scoreTest: test(score.transpose().mmul(inverse(start.information)).mmul(score).get(0, 0)),
    iterations,
    clusters: groups?.count ?? null,
  };
}

function requireAsked(terms: readonly Term[], ties: "efron" | "breslow"): void {
  requireTerms(terms);
  requireOneOf("way with ties", ties, ["efron", "breslow"]);
  if (terms.length === 0) throw new EstimateError("empty", "No term was given.", "Give at least one, or use kaplanMeier.");
}

function requireTimes(times: Float64Array, used: Int32Array, column: string): Float64Array {
  const at = times.findIndex((time) => time < 0);
  if (at === -1) return times;
  throw new EstimateError(
    "out_of_range",
    `The time "${column}" is ${times[at]!} in row ${used[at]! + 1}.`,
    "Give the time from the start of the watch, 0 or more.",
  );
}

function requireEvents(events: Float64Array, used: Int32Array, column: string): Float64Array {
  const at = events.findIndex((event) => event !== 0 && event !== 1);
  if (at !== -1) {
    throw new EstimateError(
      "out_of_range",
      `The event "${column}" is ${events[at]!} in row ${used[at]! + 1}.`,
      "Give true where the event happened and false where the watch ended first, or 1 and 0.",
    );
  }
  if (events.includes(1)) return events;
  throw new EstimateError(
    "no_variation",
    `The event "${column}" happened in none of the rows used.`,
    "There is nothing to explain; give the rate with an exact interval.",
  );
}

/** Checks that every direction of the coefficients changes the likelihood when all are 0. */
function requireInformed(information: Matrix, names: readonly string[]): void {
  const { realEigenvalues, eigenvectorMatrix } = new EigenvalueDecomposition(information, { assumeSymmetric: true });
  const at = realEigenvalues.findIndex((value) => value <= 1e-10 * Math.max(1, ...realEigenvalues));
  if (at === -1) return;
  const guilty = names.filter((_, j) => Math.abs(eigenvectorMatrix.get(j, at)) > 1e-4);
  throw new EstimateError(
    "collinear",
    `Among those at risk at an event ${guilty.map((name) => `"${name}"`).join(", ")} never ${guilty.length === 1 ? "varies" : "vary apart"}.`,
    "Leave out one of the terms: it differs only in rows whose watch ended before the first event.",
  );
}
