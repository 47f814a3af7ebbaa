import { requireRows } from "./design/requireRows.js";
import { EstimateError } from "./EstimateError.js";
import type { Interval } from "./Interval.js";
import { normalQuantile } from "./numeric/normalQuantile.js";
import { requireLevel } from "./numeric/requireLevel.js";
import { requireOneOf } from "./numeric/requireOneOf.js";
import { requireWithin } from "./numeric/requireWithin.js";
import { riskTable, type RiskRow } from "./numeric/riskTable.js";
import type { SurvivalTime } from "./SurvivalTime.js";

/** One step of a survival curve. Limits and standard error are null where survival is 0. */
export interface SurvivalStep {
  readonly time: number;
  readonly atRisk: number;
  readonly events: number;
  /** Share still without the event just after `time`. */
  readonly survival: number;
  /** Greenwood's standard error. */
  readonly se: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
}

/** Time by which a share of all have had the event. Null where the curve or its limit does not come down so far. */
export interface SurvivalQuantile extends Interval {
  /** Share with the event, 0.5 for the median. */
  readonly probability: number;
}

/** A Kaplan-Meier curve. */
export interface SurvivalCurve {
  readonly steps: readonly SurvivalStep[];
  readonly quartiles: readonly [SurvivalQuantile, SurvivalQuantile, SurvivalQuantile];
  readonly median: SurvivalQuantile;
  /** Mean time without the event up to `horizon`; null unless a horizon was given. */
  readonly restrictedMean: (Interval & { readonly horizon: number; readonly se: number | null }) | null;
  readonly n: number;
  readonly missing: number;
  readonly events: number;
  readonly censored: number;
  readonly level: number;
  readonly method: string;
}

/**
 * Kaplan-Meier curve of the time to an event, such as days until a shoe is lost, where some are watched only to a censoring time.
 *
 * Method: the product over event times of 1 - events / atRisk; Greenwood variance. `interval` "log-log" (the default) takes the
 * limits on the log(-log) scale and keeps them within 0 and 1; "log" takes them on the log scale and cuts at 1. A quantile is
 * the first time at which the curve is at or below 1 - probability, or half-way to the next event time when it runs exactly
 * level there; its limits are read off the limits of the curve in the same way. The restricted mean is the area under the
 * curve up to `horizon`; a horizon beyond the longest time watched gives null, unless the curve has reached 0.
 *
 * Missing: rows with time or event null are left out and counted in `missing`.
 *
 * Errors: `empty` when no row is complete; `not_a_number`; `out_of_range` for a negative time, an event that is neither yes nor
 * no, a row that is no record, a horizon that is not positive or a level not between 0 and 1.
 *
 * Source: Kaplan EL, Meier P (1958) J Am Stat Assoc 53:457-481; Greenwood M (1926); Kalbfleisch JD, Prentice RL, The Statistical
 * Analysis of Failure Time Data (log-log limits); Brookmeyer R, Crowley J (1982) Biometrics 38:29-41 (limits of quantiles).
 */
export function kaplanMeier(
  rows: readonly SurvivalTime[],
  options: { readonly level?: number; readonly interval?: "log-log" | "log"; readonly horizon?: number } = {},
): SurvivalCurve {
  const { interval = "log-log", horizon = null } = options;
  requireOneOf("interval", interval, ["log-log", "log"]);
  const level = requireLevel(options.level ?? 0.95);
  requireRows(rows);
  const table = riskTable(rows);
  if (table.n === 0) {
    throw new EstimateError("empty", "No row has both a time and an event.", "Give at least one complete row.");
  }
  const events = table.rows.reduce((sum, row) => sum + row.events, 0);
  const steps = curve(table.rows, normalQuantile((1 + level) / 2), interval);
  const quantile = (probability: number): SurvivalQuantile => quantileOf(steps, probability, level);
  const quartiles = [quantile(0.25), quantile(0.5), quantile(0.75)] as const;
  return {
    steps,
    quartiles,
    median: quartiles[1],
    restrictedMean: horizon === null ? null : restrictedMean(steps, table.longest, horizon, level),
    n: table.n,
    missing: table.missing,
    events,
    censored: table.n - events,
    level,
    method: `Kaplan-Meier, Greenwood variance, ${interval} limits`,
  };
}

function curve(rows: readonly RiskRow[], z: number, interval: "log-log" | "log"): SurvivalStep[] {
  let survival = 1;
  let hazardVariance = 0;
  return rows.map(({ time, atRisk, events }) => {
    survival *= 1 - events / atRisk;
    if (survival === 0) return { time, atRisk, events, survival, se: null, lower: null, upper: null };
    hazardVariance += events / (atRisk * (atRisk - events));
    const reach = z * Math.sqrt(hazardVariance);
    const log = Math.log(survival);
    const [lower, upper] =
      interval === "log"
        ? [survival * Math.exp(-reach), Math.min(1, survival * Math.exp(reach))]
        : [Math.exp(log * Math.exp(-reach / log)), Math.exp(log * Math.exp(reach / log))];
    return { time, atRisk, events, survival, se: survival * Math.sqrt(hazardVariance), lower, upper };
  });
}

function quantileOf(steps: readonly SurvivalStep[], probability: number, level: number): SurvivalQuantile {
  const crossing = (height: (step: SurvivalStep) => number | null): number | null => {
    const tolerance = 1e-9;
    const at = steps.findIndex((step) => (height(step) ?? Infinity) <= 1 - probability + tolerance);
    if (at < 0) return null;
    const flat = Math.abs(height(steps[at]!)! - (1 - probability)) <= tolerance;
    return flat && at + 1 < steps.length ? (steps[at]!.time + steps[at + 1]!.time) / 2 : steps[at]!.time;
  };
  const estimate = crossing((step) => step.survival);
  const [lower, upper] = [crossing((step) => step.lower), crossing((step) => step.upper)];
  const open = estimate === null ? "The curve does not come down so far." : "A limit of the curve does not come down so far.";
  const note = estimate === null || lower === null || upper === null ? open : null;
  return { probability, estimate, lower, upper, level, method: "Read off the curve and its limits", note };
}

function restrictedMean(
  steps: readonly SurvivalStep[],
  longest: number,
  horizon: number,
  level: number,
): NonNullable<SurvivalCurve["restrictedMean"]> {
  requireWithin("horizon", horizon, Number.MIN_VALUE, Infinity);
  const method = `Area under the curve up to ${horizon}`;
  if (horizon > longest && steps.at(-1)?.survival !== 0) {
    const note = `The longest time watched is ${longest}, so the curve is not known up to ${horizon}.`;
    return { estimate: null, se: null, lower: null, upper: null, horizon, level, method, note };
  }
  const within = steps.filter((step) => step.time < horizon);
  // Areas to the right of each step, from the last backwards.
  let area = 0;
  let variance = 0;
  let end = horizon;
  for (const { time, atRisk, events, survival } of [...within].reverse()) {
    area += survival * (end - time);
    end = time;
    if (survival > 0) variance += (area * area * events) / (atRisk * (atRisk - events));
  }
  const estimate = area + end;
  const se = Math.sqrt(variance);
  const reach = normalQuantile((1 + level) / 2) * se;
  if (se === 0) {
    const note = "No event happened before the horizon, so there is no spread to compute limits from.";
    return { estimate, se: null, lower: null, upper: null, horizon, level, method, note };
  }
  return {
    estimate,
    se,
    lower: Math.max(0, estimate - reach),
    upper: Math.min(horizon, estimate + reach),
    horizon,
    level,
    method,
    note: null,
  };
}
