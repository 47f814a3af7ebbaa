import type { SurvivalTime } from "../SurvivalTime.js";
import { requireFinding } from "./requireFinding.js";
import { requireWithin } from "./requireWithin.js";

/** One distinct time at which at least one event happened. */
export interface RiskRow {
  readonly time: number;
  /** Watched up to this time, event or censoring at it included. */
  readonly atRisk: number;
  readonly events: number;
}

/** Distinct event times in order with numbers at risk, and what was left out. */
export interface RiskTable {
  readonly rows: readonly RiskRow[];
  /** Complete rows. */
  readonly n: number;
  /** Rows with time or event null. */
  readonly missing: number;
  /** Longest time watched; 0 when there are no rows. */
  readonly longest: number;
}

/**
 * Numbers at risk and events at each distinct event time. A row censored at an event time still counts as at risk there.
 *
 * Errors: `not_a_number`; `out_of_range` for a negative time or an event that is neither yes nor no.
 */
export function riskTable(rows: readonly SurvivalTime[]): RiskTable {
  const complete: { time: number; event: boolean }[] = [];
  for (const { time, event } of rows) {
    if (time !== null && event !== null) {
      complete.push({ time: requireWithin("time", time, 0, Infinity), event: requireFinding("event", event) });
    }
  }
  complete.sort((x, y) => x.time - y.time);
  const table: RiskRow[] = [];
  for (let i = 0; i < complete.length;) {
    const { time } = complete[i]!;
    let next = i;
    let events = 0;
    for (; next < complete.length && complete[next]!.time === time; next += 1) if (complete[next]!.event) events += 1;
    if (events > 0) table.push({ time, atRisk: complete.length - i, events });
    i = next;
  }
  const longest = complete.at(-1)?.time ?? 0;
  return { rows: table, n: complete.length, missing: rows.length - complete.length, longest };
}
