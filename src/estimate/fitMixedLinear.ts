import { Matrix } from "ml-matrix";
import { groupIndex, type GroupIndex } from "./design/groupIndex.js";
import { numberColumn } from "./design/numberColumn.js";
import { designMatrix } from "./designMatrix.js";
import { EstimateError } from "./EstimateError.js";
import { bestSpreads } from "./mixed/bestSpreads.js";
import { coefficientDf } from "./mixed/coefficientDf.js";
import type { ConditionalMode } from "./mixed/ConditionalMode.js";
import { interceptStructure } from "./mixed/interceptStructure.js";
import { orthonormal } from "./mixed/orthonormal.js";
import type { RandomStructure } from "./mixed/RandomStructure.js";
import { requireGroups } from "./mixed/requireGroups.js";
import { requireReplicates } from "./mixed/requireReplicates.js";
import { slopeDf } from "./mixed/slopeDf.js";
import { slopeStructure } from "./mixed/slopeStructure.js";
import { spreadErrors } from "./mixed/spreadErrors.js";
import { spreadTable, type SpreadEstimate } from "./mixed/spreadTable.js";
import { leastSquares } from "./numeric/leastSquares.js";
import { linearPredictor } from "./numeric/linearPredictor.js";
import { profiledLinear } from "./numeric/profiledLinear.js";
import { requireLevel } from "./numeric/requireLevel.js";
import { requireOneOf } from "./numeric/requireOneOf.js";
import { sandwich } from "./numeric/sandwich.js";
import { coefficientTable } from "./regression/coefficientTable.js";
import { termWords } from "./regression/termWords.js";
import type { RegressionFit } from "./RegressionFit.js";
import type { Term } from "./Term.js";

/** What to regress on what, and which rows share what. */
export interface MixedLinearOptions {
  readonly rows: readonly object[];
  /** Column of numbers. */
  readonly outcome: string;
  readonly terms: readonly Term[];
  /** Columns whose values name the groups: one, or two with the outer first. Inner names need only be unique within an outer group. */
  readonly groups: readonly [string] | readonly [string, string];
  /** A column of numbers whose effect differs between groups, with one kind of group only; correlated with the intercept unless said not to be. */
  readonly slope?: { readonly column: string; readonly correlated?: boolean };
  /** Restricted maximum likelihood (the default), or maximum likelihood, which alone lets fits with different terms be compared. */
  readonly method?: "reml" | "ml";
  /** Confidence level; 0.95 when left out. */
  readonly level?: number;
}

/** How much groups of one kind differ. */
export interface GroupSpread extends SpreadEstimate {
  readonly name: string;
  /** Groups in the rows used. */
  readonly count: number;
  /**
   * Intraclass correlation of two rows that share this group and the ones around it: their variances over all variances. Null with a
   * random slope, where it depends on the slope's column.
   */
  readonly icc: number | null;
}

/** A linear regression with random intercepts, and perhaps a random slope. */
export interface MixedLinearFit extends RegressionFit {
  /** In the order of `groups` given. */
  readonly groups: readonly GroupSpread[];
  /** The random slope, per unit of its column; null when there is none. */
  readonly slope: (SpreadEstimate & { readonly column: string }) | null;
  /** Correlation of random intercept and slope with its limits, which are null when it is 1 or -1; null when there is none. */
  readonly correlation: { readonly estimate: number; readonly lower: number | null; readonly upper: number | null } | null;
  readonly residualSd: number;
  /** Whether an SD is 0 or the correlation 1 or -1: the data do not carry all of the random part. */
  readonly boundary: boolean;
  /** -2 log likelihood at its maximum, or -2 log restricted likelihood. */
  readonly criterion: number;
  readonly logLik: number;
  /** criterion + 2 (coefficients + SDs + correlation + 1). */
  readonly aic: number;
  /** Deviations of single groups: one list a kind of group, in the order of `groups`. */
  readonly conditionalModes: readonly (readonly ConditionalMode[])[];
  /** Deviations of the slope in single groups; null when there is no random slope. */
  readonly slopeModes: readonly ConditionalMode[] | null;
}

/**
 * Linear regression with random intercepts for one kind of group or for two of which one lies within the other, or with a random
 * intercept and slope for one kind: feet of a horse are alike, horses of a yard are alike.
 *
 * Method: the restricted likelihood, or the likelihood, with coefficients and residual variance at their best, is maximised over SDs
 * relative to the residual SD; an SD at which it is highest at 0 is put there and said to be on the boundary. Errors of the
 * coefficients: from the covariance at those SDs; limits and tests by t with containment degrees of freedom, what rides on a random
 * slope being judged by how slopes differ between groups. Limits of SDs: Wald on the log scale, null on the boundary. Conditional modes
 * come with their spread given coefficients and SDs. Rows with something missing are left out and counted.
 *
 * Errors thrown: those of `designMatrix`; `no_variation` for an outcome that never varies, or never within groups, or that the terms
 * tell exactly, and for a slope's column that never varies within groups; `too_few` for a single group, one row in every group or no
 * degrees of freedom left; `out_of_range` for the level or a slope with two kinds of group; `not_converged`.
 *
 * Sources: Bates D, Maechler M, Bolker B, Walker S (2015) J Stat Softw 67(1); Pinheiro JC & Bates DM (2000) Mixed-Effects Models in S
 * and S-PLUS, sections 2.4.2-2.4.3.
 */
export function fitMixedLinear(options: MixedLinearOptions): MixedLinearFit {
  const { rows, outcome, terms, groups, slope, method = "reml" } = options;
  const level = requireLevel(options.level ?? 0.95);
  requireGroups(groups);
  requireOneOf("method", method, ["reml", "ml"]);
  const design = designMatrix(rows, terms, { outcome, also: [...groups, ...(slope === undefined ? [] : [slope.column])] });
  const { names, n, used, dropped } = design;
  const p = names.length;
  const y = numberColumn(rows, used, outcome);
  const indices = groups.map((_, g) => groupIndex(rows, used, groups.slice(0, g + 1)));
  const notes = requireReplicates(groups, indices, y);
  const sloped = slope === undefined ? null : slopeColumn(rows, used, slope.column, indices);
  const df = sloped === null ? coefficientDf(design, indices, groups, n) : slopeDf(design, indices[0]!, sloped);

  const { columns, transform, logDeterminant } = orthonormal(design.columns);
  const plain = leastSquares(columns, y).estimate;
  const rest = linearPredictor(columns, plain).map((value, i) => y[i]! - value);
  const scale = Math.sqrt(rest.reduce((sum, value) => sum + value * value, 0) / n);
  requireRest(outcome, scale, y);
  const all = [...columns, rest.map((value) => value / scale)];
  const structure: RandomStructure =
    sloped === null ? interceptStructure(all, indices) : slopeStructure(all, sloped, indices[0]!, slope?.correlated ?? true);
  const restricted = method === "reml";
  const contrasts = n - (restricted ? p : 0);
  const shift = (restricted ? logDeterminant : 0) - contrasts * Math.log(scale);
  const profiled = profiledLinear(structure.moments, n, restricted, shift);
  const theta = settledSpreads(() => bestSpreads(profiled.logLikelihood, structure), used, slope?.column, sloped);
  const solved = profiled.solve(theta)!;
  const residualSd = scale * Math.sqrt(solved.residualVariance);
  const covariance = sandwich(transform, solved.inverse)
    .mul(residualSd ** 2)
    .to2DArray();
  const own = Float64Array.from(solved.estimate, (value, j) => plain[j]! + scale * value);
  const estimates = transform.mmul(Matrix.columnVector(own)).to1DArray();

  const relative = structure.spreads(theta);
  const errors = spreadErrors(profiled, structure, theta, residualSd / scale, contrasts);
  const { spreads, correlation, boundary, words } = spreadTable(relative, errors, residualSd, level, [
    ...groups.map((group) => `groups of ${group}`),
    ...(slope === undefined ? [] : [`slopes of ${slope.column}`]),
  ]);
  const fitted = linearPredictor(columns, own);
  const effects = structure.modes(
    theta,
    y.map((value, i) => value - fitted[i]!),
  );
  const modesOf = (k: number, g: number): readonly ConditionalMode[] =>
    indices[g]!.labels.map((group, j) => ({ group, mode: effects[k]!.modes[j]!, sd: residualSd * effects[k]!.sds[j]! }));
  const variances = spreads.slice(0, groups.length).map(({ sd }) => sd * sd);
  const total = variances.reduce((sum, value) => sum + value, residualSd ** 2);
  const parameters = p + spreads.length + (correlation === null ? 0 : 1) + 1;
  const random = [
    `intercepts of ${groups.join(" and, within it, ")}`,
    ...(slope === undefined ? [] : [`slopes of ${slope.column}${correlation === null ? ", uncorrelated" : ""}`]),
  ];
  return {
    coefficients: coefficientTable(names, estimates, covariance, level, df),
    covariance,
    n,
    dropped,
    level,
    method: `Linear mixed model of ${outcome} on ${termWords(names)}; random ${random.join(" and ")}; ${restricted ? "restricted maximum likelihood" : "maximum likelihood"}; limits of coefficients by t with containment degrees of freedom`,
    notes: [...notes, ...words],
    groups: groups.map((name, g) => ({
      name,
      count: indices[g]!.count,
      ...spreads[g]!,
      icc: sloped === null ? variances.slice(0, g + 1).reduce((sum, value) => sum + value, 0) / total : null,
    })),
    slope: slope === undefined ? null : { column: slope.column, ...spreads[1]! },
    correlation,
    residualSd,
    boundary,
    criterion: -2 * solved.logLik,
    logLik: solved.logLik,
    aic: -2 * solved.logLik + 2 * parameters,
    conditionalModes: groups.map((_, g) => modesOf(g, g)),
    slopeModes: sloped === null ? null : modesOf(1, 0),
  };
}

function slopeColumn(rows: readonly object[], used: Int32Array, column: string, indices: readonly GroupIndex[]): Float64Array {
  if (indices.length > 1) {
    throw new EstimateError("out_of_range", "A random slope was asked for with two kinds of group.", "Name one kind of group.");
  }
  const values = numberColumn(rows, used, column);
  const { index, count } = indices[0]!;
  const first = new Float64Array(count).fill(NaN);
  const differs = values.some((value, row) => {
    if (Number.isNaN(first[index[row]!])) first[index[row]!] = value;
    return first[index[row]!] !== value;
  });
  if (differs) return values;
  throw new EstimateError(
    "no_variation",
    `Column "${column}" never varies within a group, so its effect cannot differ between groups.`,
    "Leave the random slope out.",
  );
}

/** The spreads found; where they cannot be, one value that dwarfs all others of the slope's column is the reason to give. */
function settledSpreads(
  find: () => Float64Array,
  used: Int32Array,
  column: string | undefined,
  values: Float64Array | null,
): Float64Array {
  try {
    return find();
  } catch (fault) {
    if (!(fault instanceof EstimateError) || values === null || column === undefined) throw fault;
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    const squares = values.map((value) => (value - mean) ** 2);
    const place = squares.indexOf(squares.reduce((most, square) => Math.max(most, square)));
    if (squares[place]! < 0.99 * squares.reduce((sum, square) => sum + square, 0)) throw fault;
    throw new EstimateError(
      "not_converged",
      `Row ${used[place]! + 1} holds ${values[place]!} in column "${column}", which dwarfs all other rows: the slopes of groups have nothing else to rest on.`,
      "Look whether the value is a slip; if it is not, leave the random slope out.",
    );
  }
}

function requireRest(outcome: string, scale: number, values: Float64Array): void {
  if (values.every((value) => value === values[0])) {
    throw new EstimateError(
      "no_variation",
      `The outcome "${outcome}" is ${values[0]!} in every row used.`,
      "There is nothing to explain.",
    );
  }
  const largest = values.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  if (scale > 1e-12 * largest) return;
  throw new EstimateError("no_variation", `The terms tell the outcome "${outcome}" exactly.`, "Use fewer terms.");
}
