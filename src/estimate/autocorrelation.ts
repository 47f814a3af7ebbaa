import { EstimateError } from "./EstimateError.js";
import { requireCount } from "./numeric/requireCount.js";
import { requireNumber } from "./numeric/requireNumber.js";

/**
 * Correlation of a series with itself `lag` steps later, such as the rain of one day with that of the day before.
 *
 * Method: sum of (x_t - mean)(x_{t+lag} - mean) over the steps that have both, divided by the sum of (x_t - mean)^2 over all.
 *
 * Missing: not allowed, because a gap would join days that are not neighbours.
 *
 * Errors: `not_a_number`, `not_a_count`; `too_few` when the series is not longer than the lag; `no_variation` when all values
 * are equal.
 *
 * Source: Box GEP, Jenkins GM, Time Series Analysis, the sample autocorrelation; as certified in NIST StRD.
 */
export function autocorrelation(values: readonly number[], lag = 1): number {
  requireCount("lag", lag);
  for (const value of values) requireNumber("value", value);
  if (values.length <= lag || values.length < 2) {
    throw new EstimateError(
      "too_few",
      `${values.length} values are too few for a lag of ${lag}.`,
      "Give a series that is longer than the lag.",
    );
  }
  const shifted = values.map((value) => value - values[0]!);
  const mean = shifted.reduce((a, b) => a + b, 0) / shifted.length;
  const deviations = shifted.map((value) => value - mean);
  const squares = deviations.reduce((sum, x) => sum + x * x, 0);
  if (squares === 0) throw new EstimateError("no_variation", "All values are equal.", "Give a series that varies.");
  return deviations.slice(lag).reduce((sum, x, i) => sum + x * deviations[i]!, 0) / squares;
}
