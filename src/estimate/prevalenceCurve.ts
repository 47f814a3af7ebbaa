import { adjustedWords } from "./climate/adjustedWords.js";
import { exposureTerm } from "./climate/exposureTerm.js";
import { fittedModel } from "./climate/fittedModel.js";
import { standardisedPrevalence } from "./climate/standardisedPrevalence.js";
import type { ExposureModel } from "./ExposureModel.js";
import type { Interval } from "./Interval.js";
import { requireNumber } from "./numeric/requireNumber.js";
import { tQuantile } from "./numeric/tQuantile.js";
import { normalQuantile } from "./numeric/normalQuantile.js";

/** Prevalence at one exposure. */
export interface CurvePoint {
  readonly exposure: number;
  readonly estimate: number;
  readonly lower: number;
  readonly upper: number;
}

/** Prevalence of the whole population over an exposure. */
export interface PrevalenceCurve {
  readonly points: readonly CurvePoint[];
  /** Prevalence at the second exposure of `between` less that at the first; null without. */
  readonly difference: Interval | null;
  readonly exposure: string;
  readonly adjustedFor: readonly string[];
  readonly level: number;
  readonly n: number;
  readonly cases: number;
  readonly missing: number;
  readonly clusteredBy: string;
  readonly clusters: number;
  readonly method: string;
  readonly notes: readonly string[];
}

/** Where to read the curve. */
export interface CurveOptions {
  readonly at: readonly number[];
  /** Two exposures, the lower first, for the difference of prevalence. */
  readonly between?: readonly [number, number];
}

/**
 * Population-averaged prevalence over an exposure, everything else as it was: what share of all the feet seen would be cases had each visit come after that much rain, if the
 * model is right and rain stands for nothing else.
 *
 * Method: `effectOfExposure`'s model; at each exposure the expected share averaged over the rows used with their own season, foot and yard (standardisation), and for a
 * mixed model over the normal spread of yards and horses. Limits by the delta method over all parameters, on the log odds for a point and as it stands for the
 * difference (cut at -1 and 1), with the degrees of freedom of the exposure's coefficient. The band is pointwise.
 *
 * Errors: those of `effectOfExposure`, refusals too: `too_few`, `separation` and so on are thrown; `not_a_number` for an exposure that is none.
 *
 * Source: Lane PW, Nelder JA (1982) Biometrics 38:613-621 (standardisation); Zeger SL, Liang KY, Albert PS (1988) Biometrics 44:1049-1060.
 */
export function prevalenceCurve(model: ExposureModel, { at, between }: CurveOptions): PrevalenceCurve {
  const { per = 1, adjust = [] } = model;
  const { term, contrast } = exposureTerm(model);
  const level = model.level ?? 0.95;
  [...at, ...(between ?? [])].forEach((value) => requireNumber("exposure", value));
  const fitted = fittedModel({ ...model, terms: [term, ...adjust] });
  const place = fitted.design.names.indexOf(contrast);
  const { df } = fitted.fit.coefficients[place]!;
  const reach = df === null ? normalQuantile((1 + level) / 2) : tQuantile((1 + level) / 2, df);
  const read = standardisedPrevalence(fitted, place);
  const points = at.map((exposure): CurvePoint => {
    const { mean, variance } = read.at(exposure / per);
    const logOdds = Math.log(mean / (1 - mean));
    const half = (reach * Math.sqrt(variance)) / (mean * (1 - mean));
    return { exposure, estimate: mean, lower: 1 / (1 + Math.exp(half - logOdds)), upper: 1 / (1 + Math.exp(-half - logOdds)) };
  });
  const how = `standardised over the ${fitted.fit.n} feet used; delta-method limits${df === null ? "" : ` by t with ${df} degrees of freedom`}`;
  return {
    points,
    difference: between === undefined ? null : differenceOf(between),
    exposure: model.exposure,
    adjustedFor: adjustedWords(adjust),
    level,
    n: fitted.fit.n,
    cases: fitted.cases,
    missing: fitted.fit.dropped.reduce((sum, { count }) => sum + count, 0),
    clusteredBy: fitted.clusteredBy,
    clusters: fitted.clusters,
    method: `Population-averaged prevalence, ${how}. ${fitted.fit.method}`,
    notes: fitted.fit.notes,
  };

  function differenceOf([from, to]: readonly [number, number]): Interval {
    const { difference, variance } = read.between(from / per, to / per);
    const half = reach * Math.sqrt(variance);
    return {
      estimate: difference,
      lower: Math.max(-1, difference - half),
      upper: Math.min(1, difference + half),
      level,
      method: `Difference of prevalence at ${to} and ${from}, ${how}`,
      note: null,
    };
  }
}
