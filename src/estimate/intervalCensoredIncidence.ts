import { grouped } from "../study/grouped.js";
import { censoredRate } from "./climate/censoredRate.js";
import { requireRows } from "./design/requireRows.js";
import { EstimateError } from "./EstimateError.js";
import type { Interval } from "./Interval.js";
import { requireFinding } from "./numeric/requireFinding.js";
import { requireLevel } from "./numeric/requireLevel.js";
import { requireWithin } from "./numeric/requireWithin.js";
import { tQuantile } from "./numeric/tQuantile.js";
import type { ObservedGap } from "./ObservedGap.js";

/** A rate of new cases whose day is known only to lie between two visits. */
export interface CensoredIncidence extends Interval {
  /** Standard error of the logarithm of the rate; null without limits of that kind. */
  readonly seLog: number | null;
  /** Days in one unit of the rate. */
  readonly perDays: number;
  readonly events: number;
  /** Gaps the rate rests on. */
  readonly n: number;
  readonly missing: number;
  /** Days of all gaps, those with an event in full. */
  readonly days: number;
  /** Clusters the limits allow for; null when gaps count as independent. */
  readonly clusters: number | null;
  /** The same rate if every event had happened in the middle of its gap. */
  readonly midpoint: number;
  /** The same rate if every event had happened on the day it was found: too low. */
  readonly atLaterLook: number;
}

/**
 * Rate of events that are found at the later of two looks and happened at some time in between: new cases among feet that began a gap
 * clear, or cleared feet among those that began it as cases.
 *
 * Method: a constant hazard h. A gap of g days passes without an event with probability exp(-h g), so a gap with one adds log(1 - exp(-h g)) to the
 * log-likelihood and a gap without one -h g; h is its maximum. With equal gaps it is -log(1 - events / gaps) / g. Rows with `cluster` give limits on
 * the log scale from scores summed over clusters, times C / (C - 1), by t with C - 1 degrees of freedom for C clusters; rows without it profile
 * likelihood limits, which take gaps as independent. Without any event the rate is 0, the lower limit 0 and the upper the rate at which no event in all gaps
 * (with clusters: in one average cluster times their number) has probability (1 - level) / 2. The rate is given for `perDays` days: 30.4375 is a mean month, 3043.75 hundred
 * of them (left out). What is a foot-month and what a horse-month follows from the rows. Between two looks a foot may turn and turn back; that is not seen, and
 * the rate counts what was found at looks. `midpoint` and `atLaterLook` are conventions to compare with.
 *
 * Missing: rows with `event` null are left out and counted.
 *
 * Errors: `empty` when no row is left; `out_of_range` for gaps that are not above 0 days, an event that is neither yes nor no, the level or `perDays`; `not_a_number`.
 *
 * Source: Lindsey JC, Ryan LM (1998) Stat Med 17:219-238 (interval censoring); Liang KY, Zeger SL (1986) Biometrika 73:13-22 (sandwich).
 */
export function intervalCensoredIncidence(
  rows: readonly ObservedGap[],
  options: { readonly perDays?: number; readonly level?: number } = {},
): CensoredIncidence {
  const level = requireLevel(options.level ?? 0.95);
  const perDays = requireWithin("days of one unit", options.perDays ?? 3043.75, Number.MIN_VALUE, Infinity);
  requireRows(rows);
  const known = rows.filter(({ event }) => event !== null).map((row) => ({ ...row, event: requireFinding("event", row.event) }));
  if (known.length === 0) throw new EstimateError("empty", "No gap says whether there was an event.", "Give at least one.");
  known.forEach(({ days }) => requireWithin("days of a gap", days, Number.MIN_VALUE, Infinity));
  const [found, clear] = [true, false].map((event) => known.filter((row) => row.event === event).map(({ days }) => days)) as [
    number[],
    number[],
  ];
  const [foundDays, clearDays] = [total(found), total(clear)];
  const clusters = known.every(({ cluster }) => cluster !== undefined) ? grouped(known, ({ cluster }) => cluster!) : null;
  const base = {
    level,
    perDays,
    events: found.length,
    n: known.length,
    missing: rows.length - known.length,
    days: foundDays + clearDays,
    clusters: clusters?.size ?? null,
    midpoint: (found.length * perDays) / (clearDays + foundDays / 2),
    atLaterLook: (found.length * perDays) / (clearDays + foundDays),
    method: `Rate per ${perDays} days under a constant hazard, each event anywhere in its gap`,
  };
  if (found.length === 0) {
    // One in forty at 95 %: as for an exact Poisson limit of no events.
    const share = clusters === null ? 1 : clusters.size / known.length;
    const upper = (-Math.log((1 - level) / 2) * perDays) / (clearDays * share);
    const note = `No event in ${known.length} gaps${clusters === null ? "" : `; each of ${clusters.size} clusters counts as one gap of average length`}.`;
    return {
      ...base,
      estimate: 0,
      lower: 0,
      upper,
      seLog: null,
      method: `${base.method}; limits from the chance of no event`,
      note,
    };
  }
  if (clear.length === 0) {
    const note = "Every gap had an event, so the rate has no upper bound and no estimate.";
    return { ...base, estimate: null, lower: null, upper: null, seLog: null, note };
  }
  const rate = censoredRate(found, clear);
  const estimate = rate.hazard * perDays;
  if (clusters === null) {
    const [lower, upper] = rate.profile(level);
    const note = "Gaps count as independent of each other; feet of one horse are not.";
    return {
      ...base,
      estimate,
      lower: lower * perDays,
      upper: upper * perDays,
      seLog: rate.seLog,
      method: `${base.method}; profile likelihood limits`,
      note,
    };
  }
  if (clusters.size === 1) {
    const note = "All gaps belong to one cluster, so how far clusters differ is not known and no limits are given.";
    return { ...base, estimate, lower: null, upper: null, seLog: null, note };
  }
  const squares = total([...clusters.values()].map((gaps) => total(gaps.map(({ days, event }) => rate.score(days, event))) ** 2));
  const seLog = Math.sqrt((squares * clusters.size) / (clusters.size - 1)) * rate.seLog ** 2;
  const reach = Math.exp(tQuantile((1 + level) / 2, clusters.size - 1) * seLog);
  return {
    ...base,
    ...{ estimate, lower: estimate / reach, upper: estimate * reach, seLog },
    method: `${base.method}; limits on the log scale over ${clusters.size} clusters, by t with ${clusters.size - 1} degrees of freedom`,
    note: clusters.size < 10 ? `${clusters.size} clusters are few: the limits may be too narrow.` : null,
  };
}

function total(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}
