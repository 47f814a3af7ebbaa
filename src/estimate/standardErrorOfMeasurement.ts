import { EstimateError } from "./EstimateError.js";
import type { Interval } from "./Interval.js";
import { chiSquareQuantile } from "./numeric/chiSquareQuantile.js";
import { requireLevel } from "./numeric/requireLevel.js";
import { requireNumber } from "./numeric/requireNumber.js";

/** Standard deviation of repeats of the same thing. */
export interface MeasurementError extends Interval {
  readonly estimate: number;
  /** Repeats minus things. */
  readonly df: number;
  /** Things with at least two repeats. */
  readonly n: number;
  readonly repeats: number;
  /** Repeats that are null, and repeats of things with fewer than two. */
  readonly missing: number;
}

/**
 * Standard error of measurement: how much repeats of one measurement on the same, unchanged thing scatter.
 *
 * Method: root of the pooled variance of repeats within things, on repeats minus things degrees of freedom; limits from the
 * chi-square distribution of that variance, for normal errors, moved to the estimate where a very low level leaves it outside.
 *
 * Missing: null repeats are left out; a thing with fewer than two repeats left is left out. Both are counted in `missing`.
 *
 * Errors: `too_few` when nothing was measured twice; `not_a_number`; `out_of_range` for a level not between 0 and 1.
 *
 * Source: Bland JM, Altman DG (1996) BMJ 312:1654 (within-subject standard deviation).
 */
export function standardErrorOfMeasurement(
  things: readonly (readonly (number | null)[])[],
  options: { readonly level?: number } = {},
): MeasurementError {
  const level = requireLevel(options.level ?? 0.95);
  const kept = things
    .map((repeats) => repeats.filter((value): value is number => value !== null))
    .filter((repeats) => repeats.length > 1);
  for (const value of kept.flat()) requireNumber("measurement", value);
  const repeats = kept.flat().length;
  const df = repeats - kept.length;
  if (df < 1) {
    throw new EstimateError("too_few", "Nothing was measured twice.", "Give at least one thing with two repeats.");
  }
  const squares = kept.reduce((sum, values) => {
    const mean = values.reduce((a, b) => a + b, 0) / values.length;
    return sum + values.reduce((s, value) => s + (value - mean) ** 2, 0);
  }, 0);
  const missing = things.flat().length - repeats;
  const method = "Within-thing standard deviation, chi-square limits";
  const size = { level, df, n: kept.length, repeats, missing, method };
  if (squares === 0) return { estimate: 0, lower: null, upper: null, ...size, note: "All repeats are equal; no limits." };
  const estimate = Math.sqrt(squares / df);
  return {
    estimate,
    lower: Math.min(estimate, Math.sqrt(squares / chiSquareQuantile((1 + level) / 2, df))),
    upper: Math.max(estimate, Math.sqrt(squares / chiSquareQuantile((1 - level) / 2, df))),
    ...size,
    note: null,
  };
}
