import type { Coefficient } from "../Coefficient.js";
import { normalQuantile } from "../numeric/normalQuantile.js";
import { normalUpper } from "../numeric/normalUpper.js";
import { tQuantile } from "../numeric/tQuantile.js";
import { tUpper } from "../numeric/tUpper.js";

/**
 * Estimates with standard errors, Wald limits and two-sided tests: estimate ± quantile x se. `df` gives the degrees of freedom of
 * t, one for all or one a coefficient; null takes the normal distribution.
 */
export function coefficientTable(
  names: readonly string[],
  estimates: ArrayLike<number>,
  covariance: readonly (readonly number[])[],
  level: number,
  df: number | null | readonly number[],
): readonly Coefficient[] {
  return names.map((name, j) => {
    const estimate = estimates[j]!;
    const se = Math.sqrt(covariance[j]![j]!);
    const own = df === null || typeof df === "number" ? df : df[j]!;
    const tail = (1 + level) / 2;
    const half = se * (own === null ? normalQuantile(tail) : tQuantile(tail, own));
    const ratio = estimate / se;
    const statistic = Number.isFinite(ratio) ? ratio : null;
    const above = (value: number) => (own === null ? normalUpper(value) : tUpper(value, own));
    return {
      name,
      estimate,
      se,
      lower: estimate - half,
      upper: estimate + half,
      statistic,
      df: own,
      p: statistic === null ? null : 2 * above(Math.abs(statistic)),
    };
  });
}
