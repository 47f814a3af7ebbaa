import { Matrix } from "ml-matrix";
import { conditionalLikelihood } from "./climate/conditionalLikelihood.js";
import { groupIndex, type GroupIndex } from "./design/groupIndex.js";
import { numberColumn } from "./design/numberColumn.js";
import { requireIndependent } from "./design/requireIndependent.js";
import { designMatrix } from "./designMatrix.js";
import { EstimateError } from "./EstimateError.js";
import type { OddsCoefficient } from "./fitLogistic.js";
import { clusterSums } from "./numeric/clusterSums.js";
import { requireLevel } from "./numeric/requireLevel.js";
import { sandwich } from "./numeric/sandwich.js";
import { scoreCovariance } from "./numeric/scoreCovariance.js";
import { standardised } from "./numeric/standardised.js";
import { clusterNotes } from "./regression/clusterNotes.js";
import { clustersOf } from "./regression/clustersOf.js";
import { coefficientTable } from "./regression/coefficientTable.js";
import { ratioCoefficients } from "./regression/ratioCoefficients.js";
import { termWords } from "./regression/termWords.js";
import type { RegressionFit } from "./RegressionFit.js";
import type { Term } from "./Term.js";

/** What to compare within what. */
export interface ConditionalLogisticOptions {
  readonly rows: readonly object[];
  /** Column of booleans or 0 and 1. */
  readonly outcome: string;
  readonly terms: readonly Term[];
  /** Column, or columns taken together, that mark rows to be compared with each other: the feet of a horse at a visit. */
  readonly strata: string | readonly string[];
  /** Column, or columns, that mark strata that belong together, such as the visits of a horse; makes the errors cluster-robust. */
  readonly cluster?: string | readonly string[];
  /** Confidence level; 0.95 when left out. */
  readonly level?: number;
}

/** A conditional logistic regression. */
export interface ConditionalLogisticFit extends RegressionFit<OddsCoefficient> {
  /** Strata in which outcomes differ; `n` counts their rows. */
  readonly strata: number;
  /** Strata that say nothing because all their rows have the same outcome. */
  readonly uninformative: number;
  readonly cases: number;
  readonly logLik: number;
  readonly iterations: number;
  readonly clusters: number | null;
}

/**
 * Matched comparison: logistic regression with a free intercept for every stratum, conditioned away. A term compares rows of the same
 * stratum only, so all that a horse (and a day) brings to each of its feet is held equal; what is the same throughout a stratum cannot be a term.
 *
 * Method: exact conditional likelihood, by the recursion over members of a stratum, maximised by Newton's method. Errors from the information, limits
 * and tests by z; with `cluster` the sandwich of scores summed over clusters, times G / (G - 1), by t with G - 1 degrees of freedom.
 * With two rows a stratum and one 0-1 term the odds ratio is the quotient of the discordant pairs (`mcnemar`).
 *
 * Rows with something missing are left out and counted.
 *
 * Errors thrown: those of `designMatrix`; `no_variation` when no stratum has both outcomes, or a term never differs within one that has;
 * `collinear` also when terms repeat each other only within strata; `separation`; `too_few` for a single cluster; `out_of_range` for an outcome that is not 0 or 1, or the level; `not_converged`.
 *
 * Sources: Breslow NE, Day NE (1980) Statistical Methods in Cancer Research I, chapter 7; Gail MH, Lubin JH, Rubinstein LV (1981) Biometrika
 * 68:703-707 (recursion).
 */
export function fitConditionalLogistic(options: ConditionalLogisticOptions): ConditionalLogisticFit {
  const { rows, outcome, terms, strata, cluster } = options;
  const level = requireLevel(options.level ?? 0.95);
  const by = [cluster ?? []].flat();
  const within = [strata].flat();
  const { names, columns, used, dropped } = designMatrix(rows, terms, { outcome, also: [...within, ...by], intercept: false });
  const y = requireBinary(numberColumn(rows, used, outcome), outcome);
  const { index, count } = groupIndex(rows, used, within);
  const members = Array.from({ length: count }, (): number[] => []);
  index.forEach((stratum, i) => members[stratum]!.push(i));
  const informative = members.filter((rowsOf) => rowsOf.some((i) => y[i] === 1) && rowsOf.some((i) => y[i] === 0));
  requireDifferences(informative, columns, names, outcome);
  const kept = informative.flat();
  const compared = columns.map((column) =>
    Float64Array.from(informative.flatMap((rowsOf) => centred(rowsOf.map((i) => column[i]!)))),
  );
  requireIndependent(
    compared.map((values, j) => ({ name: names[j]!, values })),
    kept.length,
    false,
    " within strata",
  );
  const { columns: scaled, transform } = standardised(compared, false);
  const cases = Float64Array.from(kept, (i) => y[i]!);
  const sizes = informative.map((rowsOf) => rowsOf.length);
  const fit = conditionalLikelihood(scaled, cases, sizes, names);
  const groups = clustersOf(
    rows,
    Int32Array.from(informative, ([first]) => used[first!]!),
    by,
  );
  const robust = (clusters: GroupIndex) =>
    scoreCovariance(
      transform.mmul(fit.inverse),
      clusterSums(fit.scores, new Float64Array(informative.length).fill(1), clusters),
    ).mul(clusters.count / (clusters.count - 1));
  const covariance = (groups === null ? sandwich(transform, fit.inverse) : robust(groups)).to2DArray();
  const estimates = transform.mmul(Matrix.columnVector(fit.estimate)).to1DArray();
  const df = groups === null ? null : groups.count - 1;
  const words =
    groups === null
      ? "errors from the information; Wald limits"
      : `cluster-robust errors over ${groups.count} clusters of ${by.join(", ")}, factor G/(G-1); limits by t with ${groups.count - 1} degrees of freedom`;
  return {
    coefficients: ratioCoefficients(coefficientTable(names, estimates, covariance, level, df), "oddsRatio"),
    covariance,
    n: kept.length,
    cases: cases.reduce((sum, value) => sum + value, 0),
    strata: informative.length,
    uninformative: count - informative.length,
    dropped,
    level,
    method: `Conditional logistic regression of ${outcome} on ${termWords(names)} within ${informative.length} strata of ${within.join(", ")}, exact; ${words}`,
    notes: groups === null ? [] : clusterNotes(groups.count, names.length),
    logLik: fit.logLik,
    iterations: fit.iterations,
    clusters: groups?.count ?? null,
  };
}

/** What a stratum has in common cancels; taking it off saves digits. */
function centred(values: readonly number[]): number[] {
  const middle = values.reduce((sum, value) => sum + value, 0) / values.length;
  return values.map((value) => value - middle);
}

function requireBinary(y: Float64Array, outcome: string): Float64Array {
  const strange = y.find((value) => value !== 0 && value !== 1);
  if (strange === undefined) return y;
  throw new EstimateError("out_of_range", `The outcome "${outcome}" is ${strange} in a row.`, "Give true and false, or 1 and 0.");
}

function requireDifferences(
  strata: readonly (readonly number[])[],
  columns: readonly Float64Array[],
  names: readonly string[],
  outcome: string,
): void {
  if (strata.length === 0) {
    throw new EstimateError(
      "no_variation",
      `No stratum holds rows with and without "${outcome}".`,
      "There is nothing to compare within strata.",
    );
  }
  const flat = names.filter((_, j) => strata.every((rowsOf) => rowsOf.every((i) => columns[j]![i] === columns[j]![rowsOf[0]!])));
  if (flat.length === 0) return;
  throw new EstimateError(
    "no_variation",
    `The term ${flat.map((name) => `"${name}"`).join(", ")} never differs between rows of a stratum whose outcomes differ.`,
    "Leave the term out: a matched comparison cannot see it.",
  );
}
