import { median } from "simple-statistics";
import type { Readings } from "./Readings.js";
import type { Spread } from "./Spread.js";

/** Options of `spreadOf`. */
export interface SpreadOptions {
  /** The mean, where it is known beforehand, such as 0 for left less right. */
  readonly mean?: number;
  /** Variance below which no reading is believed to repeat, such as that of rounding. */
  readonly least: number;
}

/** Degrees of freedom the variance within rests on, at least: fewer leave the standard deviation uncertain by more than a fifth (root of 1 / 20). */
const FEWEST_DF = 10;
/** Residuals farther out than this many robust standard deviations are taken as faults and left out. */
const FARTHEST = 3;
/** Median absolute deviation of a normal variable is this part of its standard deviation. */
const MAD = 0.6745;

/**
 * Variance of one measure within and between subjects.
 *
 * Method: within is the pooled variance about the subjects' means, readings farther out than three robust standard deviations (median
 * absolute residual) left out, so that the faults that are looked for do not hide themselves; between is the variance of the subjects'
 * means less what within adds to it, at least 0.
 *
 * Missing: NaN readings are left out, and subjects with a single reading from the variance within; null for fewer than ten degrees of freedom.
 *
 * Source: one-way analysis of variance by moments; the trimming is own.
 */
export function spreadOf({ columns, values, starts }: Readings, column: number, { mean, least }: SpreadOptions): Spread {
  const subjects = starts.length - 1;
  const means: { readonly mean: number; readonly count: number }[] = [];
  const residuals: number[] = [];
  let repeated = 0;
  for (let subject = 0; subject < subjects; subject++) {
    const own: number[] = [];
    for (let row = starts[subject] ?? 0; row < (starts[subject + 1] ?? 0); row++) {
      const value = values[row * columns + column] ?? NaN;
      if (!Number.isNaN(value)) own.push(value);
    }
    if (own.length === 0) continue;
    const centre = meanOf(own);
    means.push({ mean: centre, count: own.length });
    if (own.length === 1) continue;
    repeated += 1;
    // Each residual is stretched to the variance of a reading.
    const stretch = Math.sqrt(own.length / (own.length - 1));
    for (const value of own) residuals.push((value - centre) * stretch);
  }
  if (residuals.length - repeated < FEWEST_DF) return null;
  const robust = Math.max(least, (median(residuals.map(Math.abs)) / MAD) ** 2);
  const near = residuals.filter((residual) => residual ** 2 <= FARTHEST ** 2 * robust);
  const within = Math.max(least, meanOf(near.map((residual) => residual ** 2)));
  const centre = mean ?? meanOf(means.map((own) => own.mean));
  const between = meanOf(means.map((own) => (own.mean - centre) ** 2 - within / own.count));
  return { mean: centre, between: Math.max(0, between), within };
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
