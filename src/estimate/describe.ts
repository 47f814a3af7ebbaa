import { max, mean, median, min, quantile, sampleStandardDeviation } from "simple-statistics";
import { EstimateError } from "./EstimateError.js";
import { requireNumber } from "./numeric/requireNumber.js";

/** What a list of numbers looks like. */
export interface Description {
  readonly n: number;
  readonly missing: number;
  readonly mean: number;
  /** Standard deviation, divisor n - 1; null for a single value. */
  readonly sd: number | null;
  readonly min: number;
  /** First quartile, type 7. */
  readonly q1: number;
  readonly median: number;
  /** Third quartile, type 7. */
  readonly q3: number;
  readonly max: number;
}

/**
 * Mean, standard deviation, quartiles and range of a list of numbers. It describes the list; it carries no interval, because
 * the values of one horse or yard are alike.
 *
 * Method: compensated sums and a two-pass standard deviation with divisor n - 1, so that large numbers with a small spread keep
 * their digits. Quartiles interpolate linearly between order statistics (type 7 of Hyndman and Fan, R's default).
 *
 * Missing: nulls are left out and counted in `missing`.
 *
 * Errors: `not_a_number` for NaN or an infinite value; `empty` when no value is left.
 *
 * Source: Hyndman RJ, Fan Y (1996) Am Stat 50:361-365 (quantile types); accuracy held to NIST StRD univariate sets.
 */
export function describe(values: readonly (number | null)[]): Description {
  const found = values.filter((value): value is number => value !== null);
  for (const value of found) requireNumber("value", value);
  if (found.length === 0) throw new EstimateError("empty", "No value is recorded.", "Give at least one value that is not null.");
  return {
    n: found.length,
    missing: values.length - found.length,
    mean: mean(found),
    sd: found.length > 1 ? sampleStandardDeviation(found) : null,
    min: min(found),
    q1: quantile(found, 0.25),
    median: median(found),
    q3: quantile(found, 0.75),
    max: max(found),
  };
}
