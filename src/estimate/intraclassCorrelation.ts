import { EstimateError } from "./EstimateError.js";
import type { Interval } from "./Interval.js";
import { fQuantile } from "./numeric/fQuantile.js";
import { fUpper } from "./numeric/fUpper.js";
import { requireLevel } from "./numeric/requireLevel.js";
import { requireOneOf } from "./numeric/requireOneOf.js";
import { requireNumber } from "./numeric/requireNumber.js";

/**
 * Which intraclass correlation. First figure: 1 each thing is measured by other observers, 2 the same observers, a sample of
 * many, 3 the same observers, the only ones of interest. Second: 1 for a single measurement, k for the mean of all.
 */
export type IccForm = "1,1" | "2,1" | "3,1" | "1,k" | "2,k" | "3,k";

/** Agreement of repeated measurements of the same things. */
export interface IccEstimate extends Interval {
  readonly form: IccForm;
  /** Test that things do not differ. */
  readonly f: { readonly statistic: number; readonly df1: number; readonly df2: number; readonly p: number };
  /** Mean squares: between things, within things, between observers, residual. */
  readonly meanSquares: {
    readonly between: number;
    readonly within: number;
    readonly observers: number;
    readonly residual: number;
  };
  /** Things with every measurement. */
  readonly n: number;
  readonly observers: number;
  /** Things left out because a measurement is null. */
  readonly missing: number;
}

/**
 * Intraclass correlation of measurements, in the six forms of Shrout and Fleiss: rows are things measured (feet), columns are
 * observers or repeats.
 *
 * Method: mean squares of the one-way (form 1) or two-way (forms 2 and 3) analysis of variance; forms 1 and 2 count a steady
 * difference between observers as disagreement, form 3 does not. Limits from F quantiles; those of form 2 rest on
 * Satterthwaite's degrees of freedom; a very low level that leaves the estimate outside moves the limit to it. Limits are null, with a `note`, when a mean square they divide by is 0; for the mean
 * of k, a value whose single form is -1/(k - 1) or less is `-Infinity`.
 *
 * Missing: rows with a null are left out and counted in `missing`.
 *
 * Errors: `length_mismatch` for rows of unlike length; `too_few` for fewer than two complete rows or two columns;
 * `no_variation` when all measurements are equal; `not_a_number`; `out_of_range` for a level not between 0 and 1.
 *
 * Source: Shrout PE, Fleiss JL (1979) Psychol Bull 86:420-428; McGraw KO, Wong SP (1996) Psychol Methods 1:30-46.
 */
export function intraclassCorrelation(
  matrix: readonly (readonly (number | null)[])[],
  options: { readonly form?: IccForm; readonly level?: number } = {},
): IccEstimate {
  const { form = "2,1" } = options;
  requireOneOf("form", form, ["1,1", "2,1", "3,1", "1,k", "2,k", "3,k"]);
  const level = requireLevel(options.level ?? 0.95);
  const rows = complete(matrix);
  const [n, k] = [rows.length, rows[0]!.length];
  const ms = meanSquares(rows);
  const single = form.endsWith("1");
  const kind = form.slice(0, 1);
  const tail = (1 + level) / 2;
  const df = n - 1;
  const df2 = kind === "1" ? n * (k - 1) : df * (k - 1);
  const noise = kind === "1" ? ms.within : ms.residual;
  const alone = { "1": oneWay, "2": sameObservers, "3": oneWay }[kind] ?? oneWay;
  // All forms for the mean of k measurements are Spearman-Brown steps of those for one.
  const stepUp = (icc: number): number => {
    if (single) return icc;
    return 1 + (k - 1) * icc > 0 ? (k * icc) / (1 + (k - 1) * icc) : -Infinity;
  };
  const shape: Shape = { ms, noise, n, k, df, df2, tail };
  const { icc, limits } = alone(shape);
  const statistic = ms.between / noise;
  return {
    estimate: stepUp(icc),
    lower: limits === null ? null : stepUp(Math.min(limits[0], icc)),
    upper: limits === null ? null : stepUp(Math.max(limits[1], icc)),
    level,
    form,
    f: { statistic, df1: df, df2, p: Number.isFinite(statistic) ? fUpper(statistic, df, df2) : 0 },
    meanSquares: ms,
    n,
    observers: k,
    missing: matrix.length - n,
    method: `Intraclass correlation, form (${form}), limits from F`,
    note: limits === null ? "The residual is 0 or cancels out, so there is no spread to compute limits from." : null,
  };
}

interface Shape {
  readonly ms: IccEstimate["meanSquares"];
  readonly noise: number;
  readonly n: number;
  readonly k: number;
  readonly df: number;
  readonly df2: number;
  readonly tail: number;
}

interface Single {
  readonly icc: number;
  readonly limits: readonly [number, number] | null;
}

function oneWay({ ms, noise, k, df, df2, tail }: Shape): Single {
  const icc = (ms.between - noise) / (ms.between + (k - 1) * noise);
  if (noise === 0) return { icc, limits: null };
  const ratio = ms.between / noise;
  const [low, high] = [ratio / fQuantile(tail, df, df2), ratio * fQuantile(tail, df2, df)];
  return { icc, limits: [(low - 1) / (low + k - 1), (high - 1) / (high + k - 1)] };
}

function sameObservers({ ms, n, k, df, tail }: Shape): Single {
  const { between, observers, residual } = ms;
  const icc = (between - residual) / (between + (k - 1) * residual + (k * (observers - residual)) / n);
  if (residual === 0) return { icc, limits: null };
  const f = observers / residual;
  const rest = n * (1 + (k - 1) * icc) - k * icc;
  const v = ((k - 1) * df * (k * icc * f + rest) ** 2) / (df * (k * icc * f) ** 2 + rest ** 2);
  if (!(v > 0)) return { icc, limits: null };
  const [up, down] = [fQuantile(tail, df, v), fQuantile(tail, v, df)];
  const other = k * observers + (k * n - k - n) * residual;
  if (up === Infinity || down === Infinity) return { icc, limits: null };
  return {
    icc,
    limits: [
      (n * (between - up * residual)) / (up * other + n * between),
      (n * (down * between - residual)) / (other + n * down * between),
    ],
  };
}

function complete(matrix: readonly (readonly (number | null)[])[]): readonly (readonly number[])[] {
  const width = matrix[0]?.length ?? 0;
  if (matrix.some((row) => row.length !== width)) {
    throw new EstimateError("length_mismatch", "The rows differ in length.", "Give every row one value, or null, per observer.");
  }
  const rows = matrix.filter((row): row is readonly number[] => row.every((value) => value !== null));
  for (const value of rows.flat()) requireNumber("measurement", value);
  if (rows.length < 2 || width < 2) {
    throw new EstimateError(
      "too_few",
      `There are ${rows.length} complete rows of ${width} measurements.`,
      "Give two complete rows or more, each with two measurements or more.",
    );
  }
  return rows;
}

function meanSquares(rows: readonly (readonly number[])[]): IccEstimate["meanSquares"] {
  const [n, k] = [rows.length, rows[0]!.length];
  // Taken from the first value first, so that large numbers with a small spread keep their digits.
  const origin = rows[0]![0]!;
  const values = rows.map((row) => row.map((value) => value - origin));
  const mean = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0) / list.length;
  const grand = mean(values.flat());
  const rowMeans = values.map(mean);
  const columnMeans = values[0]!.map((_, j) => mean(values.map((row) => row[j]!)));
  const squares = (list: readonly number[]): number => list.reduce((sum, x) => sum + x * x, 0);
  const between = (k * squares(rowMeans.map((m) => m - grand))) / (n - 1);
  const observers = (n * squares(columnMeans.map((m) => m - grand))) / (k - 1);
  const within = squares(values.flatMap((row, i) => row.map((x) => x - rowMeans[i]!))) / (n * (k - 1));
  const left = values.flatMap((row, i) => row.map((x, j) => x - rowMeans[i]! - columnMeans[j]! + grand));
  const residual = squares(left) / ((n - 1) * (k - 1));
  if (between === 0 && within === 0) {
    throw new EstimateError("no_variation", "All measurements are equal.", "Agreement needs things that differ.");
  }
  const scale = squares(values.flat().map((x) => x - grand)) * 1e-28;
  return { between, within: within > scale ? within : 0, observers, residual: residual > scale ? residual : 0 };
}
