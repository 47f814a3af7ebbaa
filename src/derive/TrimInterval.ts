/**
 * How a gap between routine visits ended.
 * - `kept`, `early`, `late`: the next routine visit against the plan, within, before or after the tolerance.
 * - `lost`: longer than `lostAfterDays`; loss to follow-up, not lateness.
 * - `open`: no routine visit ended it, so its length is only known to be at least this (censored).
 * - `no_plan`: ended by a routine visit, but no interval had been agreed.
 */
export type TrimIntervalStatus = "kept" | "early" | "late" | "lost" | "open" | "no_plan";

/** One gap from a routine visit of a horse to the next one. */
export interface TrimInterval {
  readonly horseId: string;
  /** Yard of the horse on the day the gap began; null when it is not known. */
  readonly yardId: string | null;
  /** Day of the routine visit, or first visit of a new horse, that started the clock. */
  readonly from: string;
  /** Day of the routine visit that ended the gap; null when none did. */
  readonly to: string | null;
  /** Calendar days of the gap; of a gap without an end, the days to where it is censored. */
  readonly gapDays: number;
  /** Days agreed; null when there was no plan. */
  readonly plannedDays: number | null;
  /** Where the plan was written: at the visit that began the gap, or for the horse. */
  readonly plannedBy: "visit" | "horse" | null;
  /** Day the next routine visit was due; null without a plan. */
  readonly dueOn: string | null;
  /** Gap minus plan, days; below 0 is early. Null unless the gap was kept, early or late. */
  readonly daysLate: number | null;
  /** Gap over plan. Null unless the gap was kept, early or late. */
  readonly ratio: number | null;
  readonly status: TrimIntervalStatus;
  /** What cut a gap without an end: the day of the review, the horse leaving, or its starting anew as a new horse. */
  readonly censoredBy: "as_of" | "left" | "new_start" | null;
  /** Days past the due day on the day of the review, 0 when not due yet; null unless `censoredBy` is `as_of` and there is a plan. */
  readonly overdueDays: number | null;
  /** Visits inside the gap that were not routine: lost shoe, lame, follow-up, other. */
  readonly unscheduledVisits: number;
  /** How many of the visits at its ends had no reason recorded and were taken as routine: 0, 1 or 2. */
  readonly assumedRoutine: number;
}
