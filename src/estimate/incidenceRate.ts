import type { Interval } from "./Interval.js";
import { poissonLimits } from "./numeric/poissonLimits.js";
import { requireLevel } from "./numeric/requireLevel.js";
import { requireOneOf } from "./numeric/requireOneOf.js";
import { requireRate } from "./numeric/requireRate.js";

/** Events per unit of time at risk. */
export interface RateInterval extends Interval {
  readonly estimate: number;
  readonly lower: number;
  readonly upper: number;
  readonly events: number;
  /** Time at risk, in the caller's unit. */
  readonly time: number;
}

/**
 * Incidence rate, `events` over `time` at risk, with Poisson limits, exact unless asked otherwise. The rate is per unit of `time`: give horse-years for
 * a rate per horse-year.
 *
 * Method: the limits of the expected number of events are half the chi-square quantiles at (1 - level)/2 on 2x and at
 * (1 + level)/2 on 2x + 2 degrees of freedom, divided by the time. The approximations of Anscombe (roots) and of Byar (cube roots) are
 * there to compare with published tables that use them. Events are taken as independent; repeated events of one
 * horse make the interval too narrow.
 *
 * Missing: time not under observation is left out of `time`.
 *
 * Errors: `not_a_number`, `not_a_count`; `empty` for no time at risk; `out_of_range` for negative time, a level not between
 * 0 and 1, or a kind of interval that there is not.
 *
 * Source: Garwood F (1936) Biometrika 28:437-442; Ulm K (1990) Am J Epidemiol 131:373-375;
 * Anscombe FJ (1948) Biometrika 35:246-254; Breslow NE, Day NE (1987) Statistical Methods in Cancer Research II (Byar).
 */
export function incidenceRate(
  events: number,
  time: number,
  options: { readonly level?: number; readonly interval?: "exact" | "anscombe" | "byar" } = {},
): RateInterval {
  const { interval = "exact" } = options;
  requireOneOf("interval", interval, ["exact", "anscombe", "byar"]);
  const level = requireLevel(options.level ?? 0.95);
  requireRate(events, time);
  const { lower, upper } = poissonLimits[interval](events, level);
  const words = { exact: "exact Poisson limits", anscombe: "Anscombe's limits", byar: "Byar's limits" }[interval];
  const method = `Incidence rate with ${words}`;
  return { estimate: events / time, lower: lower / time, upper: upper / time, level, events, time, method, note: null };
}
