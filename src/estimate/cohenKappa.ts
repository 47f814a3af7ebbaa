import { EstimateError } from "./EstimateError.js";
import type { Interval } from "./Interval.js";
import { normalQuantile } from "./numeric/normalQuantile.js";
import { normalUpper } from "./numeric/normalUpper.js";
import { requireCount } from "./numeric/requireCount.js";
import { requireOneOf } from "./numeric/requireOneOf.js";
import { requireLevel } from "./numeric/requireLevel.js";
import { requireWithin } from "./numeric/requireWithin.js";
import type { ProportionInterval } from "./ProportionInterval.js";
import { wilsonInterval } from "./wilsonInterval.js";

/** How much disagreement counts: none as full disagreement, by distance, by squared distance, or similarities 0 to 1 of one's own. */
export type KappaWeights = "none" | "linear" | "quadratic" | readonly (readonly number[])[];

/** Agreement of two observers beyond chance. */
export interface KappaEstimate extends Interval {
  /** Large-sample standard error; null when it is 0 or cannot be had. */
  readonly se: number | null;
  /** Standard error when agreement is by chance only. */
  readonly se0: number | null;
  /** estimate / se0, and its two-sided p. */
  readonly z: number | null;
  readonly p: number | null;
  /** Weighted agreement seen and expected by chance. */
  readonly observed: number;
  readonly expected: number;
  /** Exact agreement (the diagonal) as a proportion, Wilson limits. */
  readonly agreement: ProportionInterval;
  /** Two categories only: |both first - both second| / n. Near 1 kappa is low however well observers agree. */
  readonly prevalenceIndex: number | null;
  /** Two categories only: |first only - second only| / n, how differently the two use the categories. */
  readonly biasIndex: number | null;
  readonly n: number;
}

/**
 * Cohen's kappa, plain or weighted, from a square table of counts: rows the first observer, columns the second, categories in
 * the same order.
 *
 * Method: (observed - expected) / (1 - expected) agreement, with similarity weights w: 1 on the diagonal only, 1 - |i-j|/(k-1),
 * 1 - (i-j)^2/(k-1)^2, or a matrix of one's own (disagreement weights v become 1 - v / max v). Standard errors are those of
 * Fleiss, Cohen and Everitt; limits are Wald, cut at -1 and 1. Pairs must be independent: one foot a horse, or say so. When
 * observers agree throughout, the standard error is 0 and limits are null; `agreement` still has limits.
 *
 * Missing: things scored by one observer only are left out before counting, and are to be reported; see `pairedRatings`.
 *
 * Errors: `length_mismatch` for a table that is not square or weights of another size; `too_few` for fewer than two categories;
 * `empty` when nothing is counted; `not_a_number`, `not_a_count`; `out_of_range` for a weight outside 0 to 1, a diagonal weight
 * other than 1, or a level not between 0 and 1.
 *
 * Source: Cohen J (1960) Educ Psychol Meas 20:37-46; Cohen J (1968) Psychol Bull 70:213-220; Fleiss JL, Cohen J, Everitt BS
 * (1969) Psychol Bull 72:323-327; Byrt T, Bishop J, Carlin JB (1993) J Clin Epidemiol 46:423-429 (indices).
 */
export function cohenKappa(
  matrix: readonly (readonly number[])[],
  options: { readonly weights?: KappaWeights; readonly level?: number } = {},
): KappaEstimate {
  const { weights = "none" } = options;
  if (typeof weights === "string") requireOneOf("weighting", weights, ["none", "linear", "quadratic"]);
  const level = requireLevel(options.level ?? 0.95);
  const n = requireSquare(matrix);
  const k = matrix.length;
  const w = similarity(weights, k);
  const shares = matrix.map((row) => row.map((count) => count / n));
  const rows = shares.map(sum);
  const columns = shares.map((_, j) => sum(shares.map((row) => row[j]!)));
  const over = (term: (i: number, j: number) => number): number =>
    sum(rows.map((_, i) => sum(columns.map((__, j) => term(i, j)))));
  const observed = over((i, j) => w[i]![j]! * shares[i]![j]!);
  const expected = over((i, j) => w[i]![j]! * rows[i]! * columns[j]!);
  const base = {
    level,
    observed,
    expected,
    agreement: wilsonInterval(sum(matrix.map((row, i) => row[i]!)), n, { level }),
    prevalenceIndex: k === 2 ? Math.abs(shares[0]![0]! - shares[1]![1]!) : null,
    biasIndex: k === 2 ? Math.abs(shares[0]![1]! - shares[1]![0]!) : null,
    n,
    method: `Cohen's kappa, ${weightWords(weights)}, Wald limits`,
  };
  const none = { se: null, se0: null, z: null, p: null, lower: null, upper: null };
  if (1 - expected < 1e-12) {
    return { ...base, ...none, estimate: null, note: "Only one category was used, so agreement beyond chance has no meaning." };
  }
  const estimate = (observed - expected) / (1 - expected);
  // Mean weight of each row under the column margins, and of each column under the row margins.
  const byRow = w.map((row) => sum(row.map((weight, j) => weight * columns[j]!)));
  const byColumn = columns.map((_, j) => sum(w.map((row, i) => row[j]! * rows[i]!)));
  const centre = (i: number, j: number): number => byRow[i]! + byColumn[j]!;
  const spread = over((i, j) => shares[i]![j]! * (w[i]![j]! - centre(i, j) * (1 - estimate)) ** 2);
  const variance = (spread - (estimate - expected * (1 - estimate)) ** 2) / (n * (1 - expected) ** 2);
  const spread0 = over((i, j) => rows[i]! * columns[j]! * (w[i]![j]! - centre(i, j)) ** 2);
  const se0 = Math.sqrt(Math.max(0, spread0 - expected ** 2) / n) / (1 - expected);
  const z = se0 > 0 ? estimate / se0 : null;
  const chance = { estimate, se0: z === null ? null : se0, z, p: z === null ? null : 2 * normalUpper(Math.abs(z)) };
  if (!(variance > 1e-15)) {
    const note = "The table leaves no spread (the observers agree throughout), so kappa has no limits; see the agreement.";
    return { ...base, ...none, ...chance, note };
  }
  const se = Math.sqrt(variance);
  const reach = normalQuantile((1 + level) / 2) * se;
  return { ...base, ...chance, se, lower: Math.max(-1, estimate - reach), upper: Math.min(1, estimate + reach), note: null };
}

function weightWords(weights: KappaWeights): string {
  if (weights === "none") return "unweighted";
  return typeof weights === "string" ? `${weights} weights` : "weights of one's own";
}

function requireSquare(matrix: readonly (readonly number[])[]): number {
  if (matrix.some((row) => row.length !== matrix.length)) {
    throw new EstimateError(
      "length_mismatch",
      "The table of ratings is not square.",
      "Give a row and a column for every category, in the same order.",
    );
  }
  if (matrix.length < 2)
    throw new EstimateError("too_few", "There are fewer than two categories.", "Give two categories or more.");
  const n = sum(matrix.flat().map((count) => requireCount("cell of the table", count)));
  if (n === 0) throw new EstimateError("empty", "No pair of ratings was counted.", "Give at least one pair.");
  return n;
}

function similarity(weights: KappaWeights, k: number): readonly (readonly number[])[] {
  if (typeof weights === "string") {
    const power = weights === "quadratic" ? 2 : 1;
    const apart = (i: number, j: number): number => (weights === "none" ? Number(i !== j) : (Math.abs(i - j) / (k - 1)) ** power);
    return Array.from({ length: k }, (_, i) => Array.from({ length: k }, (__, j) => 1 - apart(i, j)));
  }
  if (weights.length !== k || weights.some((row) => row.length !== k)) {
    throw new EstimateError("length_mismatch", "The weights do not fit the table.", `Give ${k} rows of ${k} weights.`);
  }
  weights.forEach((row, i) => {
    row.forEach((weight, j) => requireWithin("similarity weight", weight, i === j ? 1 : 0, 1));
  });
  return weights;
}

function sum(values: readonly number[]): number {
  return values.reduce((a, b) => a + b, 0);
}
