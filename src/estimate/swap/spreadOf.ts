import { median } from "simple-statistics";
import type { Occasion } from "./Occasion.js";
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
 * Variance of one measure (by its place among the values) within and between subjects.
 *
 * Method: within is the pooled variance about the subjects' means, readings farther out than three robust standard deviations (median
 * absolute residual) left out, so that the faults that are looked for do not hide themselves; between is the variance of the subjects'
 * means less what within adds to it, at least 0.
 *
 * Missing: null readings are left out, and subjects with a single reading from the variance within; null for fewer than ten degrees of freedom.
 *
 * Source: one-way analysis of variance by moments; the trimming is own.
 */
export function spreadOf(subjects: readonly (readonly Occasion[])[], place: number, { mean, least }: SpreadOptions): Spread {
  const readings = subjects
    .map((occasions) => occasions.map(({ values }) => values[place] ?? null).filter((value) => value !== null))
    .filter((values) => values.length > 0);
  const repeated = readings.filter((values) => values.length > 1);
  // Each residual is stretched to the variance of a reading.
  const residuals = repeated.flatMap((values) => {
    const centre = meanOf(values);
    return values.map((value) => (value - centre) * Math.sqrt(values.length / (values.length - 1)));
  });
  if (residuals.length - repeated.length < FEWEST_DF) return null;
  const robust = Math.max(least, (median(residuals.map(Math.abs)) / MAD) ** 2);
  const near = residuals.filter((residual) => residual ** 2 <= FARTHEST ** 2 * robust);
  const within = Math.max(least, meanOf(near.map((residual) => residual ** 2)));
  const centre = mean ?? meanOf(readings.map(meanOf));
  const between = meanOf(readings.map((values) => (meanOf(values) - centre) ** 2 - within / values.length));
  return { mean: centre, between: Math.max(0, between), within };
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
