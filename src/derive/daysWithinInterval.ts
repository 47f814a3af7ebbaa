import { dateOfDay } from "../study/dateOfDay.js";
import { requiredDay } from "./requiredDay.js";
import type { TrimInterval } from "./TrimInterval.js";

/** Days of one gap after a routine visit, and how many of them lay within the interval agreed. */
export interface DaysWithinInterval {
  readonly horseId: string;
  /** Yard of the horse on the day the gap began; null when it is not known. */
  readonly yardId: string | null;
  /** First day that counts: that of the routine visit. */
  readonly first: string;
  /** Last day that counts: the day before the next routine visit, or before the day of the review or of leaving. */
  readonly last: string;
  readonly days: number;
  readonly within: number;
}

/**
 * Horse-days within the agreed interval, one row for each gap of `trimIntervals` that has a plan and at least one day, by day and horse.
 *
 * Method: the days from a routine visit, that day included, to the day before the next one, or before the gap is cut. As many of
 * them as were agreed count as within. A visit restarts the clock: what was left of the interval before it is not carried forward, so
 * that coming early earns no days. No tolerance is used: each day over is a day over.
 *
 * Missing: gaps without a plan, gaps of lost contact and gaps cut because the horse started anew have no row, since it is not known what was agreed, or whether the
 * horse was there.
 *
 * Source: the proportion of days covered, without carrying forward; see `daysCovered`.
 */
export function daysWithinInterval(intervals: readonly TrimInterval[]): DaysWithinInterval[] {
  return intervals.flatMap(({ horseId, yardId, from, gapDays, plannedDays, status, censoredBy }): DaysWithinInterval[] => {
    if (plannedDays === null || status === "lost" || censoredBy === "new_start" || gapDays < 1) return [];
    const last = dateOfDay(requiredDay(from) + gapDays - 1);
    return [{ horseId, yardId, first: from, last, days: gapDays, within: Math.min(plannedDays, gapDays) }];
  });
}
