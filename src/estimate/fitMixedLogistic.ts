import { Matrix } from "ml-matrix";
import { binomialOutcome, type BinomialColumns } from "./design/binomialOutcome.js";
import { groupIndex } from "./design/groupIndex.js";
import { designMatrix } from "./designMatrix.js";
import type { OddsCoefficient } from "./fitLogistic.js";
import type { ConditionalMode } from "./mixed/ConditionalMode.js";
import { conditionalModes } from "./mixed/conditionalModes.js";
import { coefficientDf } from "./mixed/coefficientDf.js";
import { pooledCells } from "./mixed/pooledCells.js";
import type { RandomIntercept } from "./mixed/RandomIntercept.js";
import { randomIntercepts } from "./mixed/randomIntercepts.js";
import { requireGroups } from "./mixed/requireGroups.js";
import { requirePoints } from "./mixed/requirePoints.js";
import { requireSettled } from "./mixed/requireSettled.js";
import { requireSpread } from "./mixed/requireSpread.js";
import { startOf, type MixedStart } from "./mixed/startOf.js";
import { binomialFamily } from "./numeric/binomialFamily.js";
import { requireOneOf } from "./numeric/requireOneOf.js";
import { fitNested } from "./numeric/fitNested.js";
import { irls } from "./numeric/irls.js";
import { nestCounts } from "./numeric/nestCounts.js";
import { requireLevel } from "./numeric/requireLevel.js";
import { sandwich } from "./numeric/sandwich.js";
import { standardised } from "./numeric/standardised.js";
import { coefficientTable } from "./regression/coefficientTable.js";
import { ratioCoefficients } from "./regression/ratioCoefficients.js";
import { separationError } from "./regression/separationError.js";
import { termWords } from "./regression/termWords.js";
import type { RegressionFit } from "./RegressionFit.js";
import type { Term } from "./Term.js";

/** What to regress on what, and which rows share what. */
export interface MixedLogisticOptions {
  readonly rows: readonly object[];
  /** Column of booleans or 0 and 1; or columns of cases and of numbers examined. A row in which nothing was examined is left out. */
  readonly outcome: BinomialColumns;
  readonly terms: readonly Term[];
  /** Columns whose values name the groups: one, or two with the outer first. Inner names need only be unique within an outer group. */
  readonly groups: readonly [string] | readonly [string, string];
  /** Exact maximum likelihood by quadrature when left out; or the joint Laplace approximation, which is quicker and biased. */
  readonly method?: "quadrature" | "laplace";
  /** Quadrature points, one number a group in the order of `groups`; chosen by the fit when left out. */
  readonly nodes?: readonly number[];
  /** Confidence level; 0.95 when left out. */
  readonly level?: number;
  /** Where to start: coefficients in the order they come out, SDs in the order of `groups`. */
  readonly start?: MixedStart;
}

/** How the maximum was reached. */
export interface Convergence {
  readonly converged: boolean;
  readonly iterations: number;
  /** Length of the gradient measured by the covariance matrix: how many standard errors one more step would go. */
  readonly gradientNorm: number;
  /** Times the likelihood was computed with its gradient. */
  readonly evaluations: number;
  /** Points of the rule in the order of `groups`; null for Laplace. */
  readonly nodes: readonly number[] | null;
  /** What 1.4 times as many points a group would add to the log-likelihood; null for Laplace. */
  readonly changeWithMoreNodes: number | null;
  readonly note: string | null;
}

/** A logistic regression with random intercepts. */
export interface MixedLogisticFit extends RegressionFit<OddsCoefficient> {
  /** In the order of `groups` given. */
  readonly groups: readonly RandomIntercept[];
  /** Deviations of single groups: one list a kind, in the order of `groups`. */
  readonly conditionalModes: readonly (readonly ConditionalMode[])[];
  /** Covariance of the coefficients and, after them, the logarithms of the SDs above 0, named `log SD of yard`. */
  readonly parameters: { readonly names: readonly string[]; readonly covariance: readonly (readonly number[])[] };
  /** Rows used; with a single outcome the same as `n`, which counts what was examined. */
  readonly rowsUsed: number;
  /** Cases among the n. */
  readonly cases: number;
  /** Log-likelihood at the maximum, binomial coefficients and all constants included. */
  readonly logLik: number;
  /** -2 logLik. */
  readonly deviance: number;
  /** -2 logLik + 2 df. */
  readonly aic: number;
  /** Parameters: coefficients and SDs. */
  readonly df: number;
  readonly convergence: Convergence;
}

/**
 * Logistic regression with random intercepts for one kind of group, or for two of which one lies within the other: feet of a
 * horse are alike, horses of a yard are alike. A coefficient compares observations of the same groups; `marginalPrevalence`
 * averages over groups.
 *
 * Method: maximum likelihood over coefficients and SDs. `"quadrature"` integrates the random effects out by nested adaptive
 * Gauss-Hermite quadrature, the outer integral over the effect of each outer group, the inner over each inner group's given it; the
 * points are raised until 1.4 times as many change the log-likelihood by less than 1e-8 of it. `"laplace"` is the joint Laplace
 * approximation; with few observations a group it makes the SDs too small (with four feet a horse by a tenth or more).
 * The likelihood is maximised by a quasi-Newton method over SDs free to be 0, the design centred and scaled.
 *
 * Errors of the estimates: from the observed information over all parameters. Limits and tests of coefficients: Wald, by t with
 * containment degrees of freedom: what is the same in all rows of a yard is judged by the number of yards. With some 20 yards
 * Wald limits by z are too narrow; see docs/coverage.md. Limits of SDs: Wald on the log scale, by z.
 *
 * Rows with something missing are left out and counted. Splitting a row of counts into single observations changes nothing but
 * the binomial coefficients in `logLik`.
 *
 * Errors thrown: those of `designMatrix`; `no_variation` when all outcomes are the same; `separation` when terms tell the outcome
 * without error, or it never differs within an inner group; `too_few` for a single group, as many inner as outer groups, one
 * observation a group, or no degrees of freedom left for a coefficient; `out_of_range` for an outcome that is not 0 or 1, more cases
 * than examined, the level, the nodes, the method, more than two groups, an SD to start from; `length_mismatch` for nodes or starts of the wrong number; `not_a_count`;
 * `not_converged`, also when the likelihood has no single summit.
 *
 * Sources: Pinheiro JC & Chao EC (2006) J Comput Graph Stat 15:58-81 (nested quadrature); Breslow NE & Clayton DG (1993) JASA
 * 88:9-25 (Laplace); Pinheiro JC & Bates DM (2000) Mixed-Effects Models in S and S-PLUS, section 2.4.2 (degrees of freedom).
 */
export function fitMixedLogistic(options: MixedLogisticOptions): MixedLogisticFit {
  const { rows, outcome, terms, groups, method = "quadrature", start } = options;
  const level = requireLevel(options.level ?? 0.95);
  requireGroups(groups);
  requireOneOf("method", method, ["quadrature", "laplace"]);
  const points = requirePoints(options.nodes, groups);
  const single = typeof outcome === "string";
  const name = single ? outcome : outcome.cases;
  const positive = single ? [] : [outcome.n];
  const design = designMatrix(rows, terms, { outcome: name, also: groups, positive });
  const { names, used, dropped } = design;
  const { cases, n } = binomialOutcome(rows, used, outcome);
  const total = n.reduce((sum, value) => sum + value, 0);
  const indices = groups.map((_, g) => groupIndex(rows, used, groups.slice(0, g + 1)));
  const spreadNotes = requireSpread(groups, indices, { cases, n });
  const df = coefficientDf(design, indices, groups, total);

  const { columns, transform } = standardised(design.columns, design.intercept);
  const inner = indices.at(-1)!;
  const outer = groups.length === 2 ? indices[0]! : null;
  const data = nestCounts({ columns, cases, n, outer: outer?.index ?? new Int32Array(used.length), inner: inner.index });
  const plain = irls({ family: binomialFamily, ...pooledCells(data) });
  if (plain.separation !== null) {
    const shares = cases.map((value, i) => value / n[i]!);
    throw separationError(names, design.columns, plain.separation, shares, name);
  }
  const places = groups.map((_, g) => data.terms + 2 - groups.length + g);
  const fit = fitNested(data, {
    sds: places,
    method,
    points,
    start: startOf(start, plain.estimate, transform, groups),
  });
  const note = requireSettled(fit, places, groups);

  const estimates = transform.mmul(Matrix.columnVector(fit.theta.subarray(0, data.terms))).to1DArray();
  const sdPlaces = places.filter((place) => fit.free.includes(place));
  const back = Matrix.eye(fit.free.length);
  back.setSubMatrix(transform, 0, 0);
  sdPlaces.forEach((place, k) => back.set(data.terms + k, data.terms + k, 1 / fit.theta[place]!));
  const whole = sandwich(back, Matrix.from1DArray(back.rows, back.rows, fit.covariance)).to2DArray();
  const covariance = whole.slice(0, data.terms).map((row) => row.slice(0, data.terms));
  const intercepts = randomIntercepts(
    groups.map((group, g) => {
      const at = sdPlaces.indexOf(places[g]!);
      const seLogSd = at === -1 ? null : Math.sqrt(whole[data.terms + at]![data.terms + at]!);
      return { name: group, count: indices[g]!.count, sd: fit.theta[places[g]!]!, seLogSd };
    }),
    level,
  );
  const nodes = fit.points === null ? null : groups.length === 2 ? [fit.points.outer, fit.points.inner] : [fit.points.inner];
  const parameterCount = names.length + groups.length;
  return {
    coefficients: ratioCoefficients(coefficientTable(names, estimates, covariance, level, df), "oddsRatio"),
    covariance,
    groups: intercepts,
    conditionalModes: conditionalModes(data, fit.modes, [fit.theta[data.terms]!, fit.theta[data.terms + 1]!], {
      outer: outer?.labels ?? null,
      inner: inner.labels,
    }),
    parameters: {
      names: [...names, ...groups.filter((_, g) => sdPlaces.includes(places[g]!)).map((group) => `log SD of ${group}`)],
      covariance: whole,
    },
    n: total,
    rowsUsed: used.length,
    cases: cases.reduce((sum, value) => sum + value, 0),
    dropped,
    level,
    logLik: fit.logLik,
    deviance: -2 * fit.logLik,
    aic: -2 * fit.logLik + 2 * parameterCount,
    df: parameterCount,
    convergence: {
      converged: note === null,
      iterations: fit.iterations,
      gradientNorm: fit.distance,
      evaluations: fit.evaluations,
      nodes,
      changeWithMoreNodes: fit.change,
      note,
    },
    method: methodWords(name, names, groups, nodes),
    notes: [
      ...spreadNotes,
      ...intercepts.flatMap((intercept) => intercept.note ?? []),
      ...(fit.points === null ? [laplaceNote(groups, total / inner.count)] : []),
      ...(note === null ? [] : [note]),
    ],
  };
}

function methodWords(
  outcome: string,
  names: readonly string[],
  groups: readonly string[],
  nodes: readonly number[] | null,
): string {
  const how =
    nodes === null
      ? "joint Laplace approximation"
      : `exact maximum likelihood by ${nodes.length === 2 ? "nested " : ""}adaptive Gauss-Hermite quadrature, ${nodes.join(" x ")} points`;
  return [
    `Logistic regression of ${outcome} on ${termWords(names)} with random intercepts for ${groups.join(" and, within it, ")}`,
    how,
    "errors from the observed information",
    "limits and tests by t with containment degrees of freedom",
  ].join("; ");
}

function laplaceNote(groups: readonly string[], each: number): string {
  return `By the Laplace approximation SDs come out too small when groups hold few observations; here ${groups.at(-1)!} has ${each.toFixed(1)} on average. Fit by quadrature before reporting them.`;
}
