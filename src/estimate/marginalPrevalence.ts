import { EstimateError } from "./EstimateError.js";
import type { MixedLogisticFit } from "./fitMixedLogistic.js";
import type { Interval } from "./Interval.js";
import { averagedLogistic } from "./numeric/averagedLogistic.js";
import { requireLevel } from "./numeric/requireLevel.js";
import { requireNumber } from "./numeric/requireNumber.js";
import { tQuantile } from "./numeric/tQuantile.js";

/** A prevalence averaged over groups. */
export interface MarginalPrevalence extends Interval {
  readonly estimate: number;
  readonly lower: number;
  readonly upper: number;
  /** Standard error of the log odds of the prevalence; the limits rest on it. */
  readonly seLogOdds: number;
}

/**
 * Population-averaged prevalence under a mixed logistic fit: the expected share of cases among observations with the terms at
 * given values, over all groups there could be, not in a typical one.
 *
 * `at` gives a number for every coefficient but the intercept, by its name: `{ rainMm14d: 40, "ground: clay": 1 }`; the product of two
 * terms is a coefficient of its own and needs its own number.
 *
 * Method: the logistic curve averaged over a normal distribution with the variances of all random intercepts added up, by the
 * trapezoid rule on the whole line. Limits by the delta method on the log odds over all parameters, SDs included, and t with the
 * degrees of freedom of the intercept.
 *
 * Errors: `unknown_column` for a name that is no coefficient; `length_mismatch` for one left out; `not_a_number`; `out_of_range` for
 * the level.
 *
 * Source: Zeger SL, Liang KY & Albert PS (1988) Biometrics 44:1049-1060 (population-averaged against subject-specific).
 */
export function marginalPrevalence(
  fit: MixedLogisticFit,
  at: Readonly<Record<string, number>>,
  options: { readonly level?: number } = {},
): MarginalPrevalence {
  const level = requireLevel(options.level ?? fit.level);
  const { coefficients, groups, parameters } = fit;
  const values = valuesOf(
    coefficients.map(({ name }) => name),
    at,
  );
  const eta = coefficients.reduce((sum, { estimate }, j) => sum + estimate * values[j]!, 0);
  const variance = groups.reduce((sum, { sd }) => sum + sd * sd, 0);
  const { mean, slope, bend } = averagedLogistic(eta, Math.sqrt(variance));
  const slopes = [...values.map((value) => slope * value), ...groups.filter(({ sd }) => sd > 0).map(({ sd }) => bend * sd * sd)];
  const variancePrevalence = slopes.reduce(
    (sum, a, i) => sum + slopes.reduce((part, b, j) => part + a * b * parameters.covariance[i]![j]!, 0),
    0,
  );
  const seLogOdds = Math.sqrt(variancePrevalence) / (mean * (1 - mean));
  const df = coefficients[0]!.df!;
  const reach = tQuantile((1 + level) / 2, df) * seLogOdds;
  const logOdds = Math.log(mean / (1 - mean));
  return {
    estimate: mean,
    lower: 1 / (1 + Math.exp(reach - logOdds)),
    upper: 1 / (1 + Math.exp(-reach - logOdds)),
    seLogOdds,
    level,
    method: `Population-averaged prevalence over ${groups.map(({ name }) => name).join(" and ")}; delta-method limits on the log odds by t with ${df} degrees of freedom`,
    note: null,
  };
}

function valuesOf(names: readonly string[], at: Readonly<Record<string, number>>): readonly number[] {
  const stranger = Object.keys(at).find((name) => name === "intercept" || !names.includes(name));
  const list = names.filter((name) => name !== "intercept").map((name) => `"${name}"`);
  if (stranger !== undefined) {
    throw new EstimateError(
      "unknown_column",
      `The fit has no term "${stranger}".`,
      `Its terms are ${list.join(", ") || "none"}.`,
    );
  }
  return names.map((name) => {
    if (name === "intercept") return 1;
    const value = at[name];
    if (value !== undefined) return requireNumber(name, value);
    throw new EstimateError("length_mismatch", `No value is given for "${name}".`, `Give one for each of ${list.join(", ")}.`);
  });
}
