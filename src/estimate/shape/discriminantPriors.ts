import { EstimateError } from "../EstimateError.js";

/**
 * Prior probability of each class, in order: those given by name, or the shares of the rows.
 *
 * Errors: `out_of_range` when a class has no prior above 0 or they do not sum to 1 within 1e-6.
 */
export function discriminantPriors(
  classes: readonly string[],
  counts: readonly number[],
  given: Readonly<Record<string, number>> | undefined,
): readonly number[] {
  const total = counts.reduce((sum, count) => sum + count, 0);
  if (given === undefined) return counts.map((count) => count / total);
  const priors = classes.map((name) => given[name] ?? NaN);
  const sum = priors.reduce((a, b) => a + b, 0);
  if (priors.every((prior) => prior > 0) && Object.keys(given).length === classes.length && Math.abs(sum - 1) < 1e-6) {
    return priors.map((prior) => prior / sum);
  }
  throw new EstimateError(
    "out_of_range",
    `The priors ${JSON.stringify(given)} do not fit the classes ${classes.join(", ")}.`,
    "Give every class a probability above 0, with a sum of 1.",
  );
}
