import { normalQuantile } from "../numeric/normalQuantile.js";
import type { RandomSource } from "../numeric/RandomSource.js";
import { requireRandom } from "../numeric/requireRandom.js";
import { tQuantile } from "../numeric/tQuantile.js";
import type { RatioBand } from "../RatioBand.js";
import type { FittedModel } from "./fittedModel.js";
import { simultaneousQuantile } from "./simultaneousQuantile.js";

/** Odds ratios of contrasts of some coefficients of a fit, with bands that hold each alone and all together. */
export function profileOf(
  { fit }: FittedModel,
  places: readonly number[],
  contrasts: readonly (readonly number[])[],
  level: number,
  random: RandomSource,
): readonly RatioBand[] {
  const estimates = places.map((place) => fit.coefficients[place]!.estimate);
  const covariance = places.map((i) => places.map((j) => fit.covariance[i]![j]!));
  const { df } = fit.coefficients[places[0]!]!;
  const alone = df === null ? normalQuantile((1 + level) / 2) : tQuantile((1 + level) / 2, df);
  const together = Math.max(alone, simultaneousQuantile(covariance, contrasts, level, df, requireRandom(random)));
  return contrasts.map((contrast) => {
    const logOdds = contrast.reduce((sum, value, j) => sum + value * estimates[j]!, 0);
    const variance = contrast.reduce(
      (sum, a, i) => sum + contrast.reduce((part, b, j) => part + a * b * covariance[i]![j]!, 0),
      0,
    );
    const se = Math.sqrt(Math.max(0, variance));
    return {
      estimate: Math.exp(logOdds),
      lower: Math.exp(logOdds - alone * se),
      upper: Math.exp(logOdds + alone * se),
      lowerTogether: Math.exp(logOdds - together * se),
      upperTogether: Math.exp(logOdds + together * se),
    };
  });
}
