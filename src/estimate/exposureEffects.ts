import { adjustedWords } from "./climate/adjustedWords.js";
import { exposureTerm } from "./climate/exposureTerm.js";
import { refusedEffect } from "./climate/refusedEffect.js";
import { stratifiedEffect } from "./climate/stratifiedEffect.js";
import { effectOfExposure } from "./effectOfExposure.js";
import type { ExposureEffect } from "./ExposureEffect.js";
import type { ExposureModel } from "./ExposureModel.js";
import { fitLogistic } from "./fitLogistic.js";

/** What stands beside the model itself. */
export interface ExposureEffectsOptions {
  /** Column of the strata of the Mantel-Haenszel estimate: the month of the year. Left out: none. */
  readonly stratum?: string;
  /** The stratified estimate compares exposures above this with those up to it; the median of the rows used when left out. */
  readonly above?: number;
  /** Two exposures to compare, the lower first: the odds ratio of the models between them. */
  readonly between?: readonly [number, number];
}

/**
 * The effect of one exposure in rising order of care: crude; crude and Mantel-Haenszel within strata, of high against low exposure; estimating equations; mixed model.
 * What moves between the first and the last line is what stood in the way.
 *
 * Method: crude is a logistic regression of the exposure alone with feet as independent, Wald limits: too sure of itself, shown to compare. The stratified lines compare
 * rows above `above` with the others by `mantelHaenszel`, limits by leaving out each outer group in turn (jackknife of the log odds ratio, t with one degree of freedom less than
 * groups; with fewer outer groups than `minimumGroups`, inner ones). The last two are `effectOfExposure`. The odds ratio of estimating equations is the population's, that of the mixed model one foot's; the
 * latter lies further from 1 whenever horses or yards differ. `between` adds the same two between two exposures. With weights there is no mixed model.
 *
 * Missing, errors: as `effectOfExposure`; every line uses the rows that have all columns of its own.
 *
 * Source: Mantel N, Haenszel W (1959) J Natl Cancer Inst 22:719-748; Neuhaus JM, Kalbfleisch JD, Hauck WW (1991) Int Stat Rev 59:25-35 (why the two odds ratios
 * differ).
 */
export function exposureEffects(model: ExposureModel, options: ExposureEffectsOptions = {}): ExposureEffect[] {
  const { stratum, above, between } = options;
  const gee = effectOfExposure({ ...model, method: "gee" });
  // A mixed model takes no weights.
  const models = model.weights === undefined ? [gee, effectOfExposure({ ...model, method: "mixed" })] : [gee];
  const cut = { ...model, ...(above === undefined ? {} : { above }) };
  const stratified = stratum === undefined ? [] : [stratifiedEffect(cut, null), stratifiedEffect(cut, stratum)];
  const apart = between === undefined ? [] : models.map((effect) => rescaled(effect, model, between));
  return [crude(model), ...stratified, ...models, ...apart];
}

function crude(model: ExposureModel): ExposureEffect {
  const { rows, outcome, level = 0.95 } = model;
  const { term, contrast } = exposureTerm(model);
  const base = { name: "Crude", contrast, adjustedFor: adjustedWords([]), level };
  return refusedEffect(base, () => {
    const fit = fitLogistic({ rows, outcome, terms: [term], interval: "wald", level });
    const found = fit.coefficients[1]!;
    return {
      ...base,
      ...found.oddsRatio,
      ...{ seLog: found.se, p: found.p, df: null, n: fit.n, cases: fit.cases, refused: null, method: fit.method },
      missing: fit.dropped.reduce((sum, { count }) => sum + count, 0),
      clusteredBy: null,
      clusters: null,
      note: "Nothing is held equal and feet count as independent.",
    };
  });
}

/** The same log odds ratio over another distance of the exposure. */
function rescaled(
  effect: ExposureEffect,
  { exposure, per = 1 }: ExposureModel,
  [from, to]: readonly [number, number],
): ExposureEffect {
  const times = (to - from) / per;
  const power = (value: number | null) => (value === null ? null : value ** times);
  const limits = [power(effect.lower), power(effect.upper)] as const;
  const [lower, upper] = times < 0 ? [limits[1], limits[0]] : limits;
  return {
    ...effect,
    ...{ lower, upper, contrast: `${exposure} ${to} against ${from}`, estimate: power(effect.estimate) },
    seLog: effect.seLog === null ? null : effect.seLog * Math.abs(times),
  };
}
