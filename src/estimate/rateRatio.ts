import { clopperPearsonInterval } from "./clopperPearsonInterval.js";
import type { EffectInterval } from "./EffectInterval.js";
import type { Interval } from "./Interval.js";
import { binomialTwoSided } from "./numeric/binomialTwoSided.js";
import { normalQuantile } from "./numeric/normalQuantile.js";
import { ratioOf } from "./numeric/ratioOf.js";
import { requireLevel } from "./numeric/requireLevel.js";
import { requireRate } from "./numeric/requireRate.js";
import { waldEffect } from "./numeric/waldEffect.js";

/** Ratio of two incidence rates, first over second, with exact limits. */
export interface RateRatio extends Interval {
  /** Exact two-sided p of equal rates; null without events. */
  readonly p: number | null;
  /** The same ratio with Wald limits on the log scale. */
  readonly wald: EffectInterval;
  /** First rate minus second, per unit of time, with Wald limits. */
  readonly difference: EffectInterval;
  readonly events: number;
}

/**
 * Ratio and difference of two incidence rates: `events1` over `time1` against `events2` over `time2`.
 *
 * Method: given all events, those of the first group are binomial, with chance rho t1 / (rho t1 + t2) at rate ratio rho;
 * Clopper-Pearson limits of that chance give the exact limits, the two-sided binomial test the p. Beside it the log-Wald
 * interval with standard error sqrt(1/x1 + 1/x2), and the difference with standard error sqrt(x1/t1^2 + x2/t2^2). Unbounded
 * limits are `Infinity`; without any event the ratio is null with limits 0 and `Infinity`.
 *
 * Missing: time not under observation is left out of the times.
 *
 * Errors: `not_a_number`, `not_a_count`; `empty` for no time at risk; `out_of_range` for negative time or a level not between
 * 0 and 1.
 *
 * Source: Przyborowski J, Wilenski H (1940) Biometrika 31:313-323; Rothman KJ, Modern Epidemiology (Wald limits).
 */
export function rateRatio(
  events1: number,
  time1: number,
  events2: number,
  time2: number,
  options: { readonly level?: number } = {},
): RateRatio {
  const level = requireLevel(options.level ?? 0.95);
  requireRate(events1, time1);
  requireRate(events2, time2);
  const events = events1 + events2;
  const [rate1, rate2] = [events1 / time1, events2 / time2];
  const estimate = ratioOf(rate1, rate2);
  const { lower, upper } = events === 0 ? { lower: 0, upper: 1 } : clopperPearsonInterval(events1, events, { level });
  const odds = (p: number): number => (p === 1 ? Infinity : ((p / (1 - p)) * time2) / time1);
  const se = Math.sqrt(events1 / time1 ** 2 + events2 / time2 ** 2);
  const reach = normalQuantile((1 + level) / 2) * se;
  const none = "No events were seen, so there is no spread to compute limits from.";
  return {
    estimate,
    lower: odds(lower),
    upper: odds(upper),
    level,
    p: events === 0 ? null : binomialTwoSided(events1, events, time1 / (time1 + time2)),
    wald: waldEffect(estimate, Math.sqrt(1 / events1 + 1 / events2), "ratio", level, {
      method: "Rate ratio, Wald limits on the log scale",
      why: "A group has no events, so the ratio has no Wald limits; the exact ones hold.",
    }),
    difference: {
      estimate: rate1 - rate2,
      se: events === 0 ? null : se,
      lower: events === 0 ? null : rate1 - rate2 - reach,
      upper: events === 0 ? null : rate1 - rate2 + reach,
      level,
      method: "Rate difference, Wald limits",
      note: events === 0 ? none : null,
    },
    events,
    method: "Rate ratio with exact limits, conditional on all events",
    note: events === 0 ? "No events were seen, so nothing is known about the ratio." : null,
  };
}
