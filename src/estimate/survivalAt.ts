import { requireRows } from "./design/requireRows.js";
import type { SurvivalCurve } from "./kaplanMeier.js";
import { requireFinding } from "./numeric/requireFinding.js";
import { requireWithin } from "./numeric/requireWithin.js";
import type { SurvivalTime } from "./SurvivalTime.js";

/** A survival curve at one time. */
export interface SurvivalReading {
  readonly time: number;
  /** Things watched up to this time or longer. */
  readonly atRisk: number;
  readonly estimate: number;
  readonly lower: number | null;
  readonly upper: number | null;
}

/**
 * A Kaplan-Meier curve read off at one time; null when nothing was watched so long.
 *
 * Method: the last step at or before the time; before the first step the share is 1, without limits, since nothing has happened yet.
 *
 * Missing: rows with time or event null are not counted at risk.
 *
 * Errors: `not_a_number`; `out_of_range` for a negative time or an event that is neither yes nor no.
 *
 * Source: as `kaplanMeier`.
 */
export function survivalAt(curve: SurvivalCurve, rows: readonly SurvivalTime[], time: number): SurvivalReading | null {
  requireWithin("time", time, 0, Infinity);
  requireRows(rows);
  const watched = rows.filter((row) => row.time !== null && row.event !== null);
  watched.forEach((row) => requireFinding("event", row.event));
  const atRisk = watched.filter((row) => requireWithin("time of a row", row.time!, 0, Infinity) >= time).length;
  if (atRisk === 0) return null;
  const step = curve.steps.filter((each) => each.time <= time).at(-1);
  if (step === undefined) return { time, atRisk, estimate: 1, lower: null, upper: null };
  return { time, atRisk, estimate: step.survival, lower: step.lower, upper: step.upper };
}
