/**
 * How a horse stands against its date on the day of the list.
 * - `over`: past its date by more than the tolerance.
 * - `past`: past its date, within the tolerance.
 * - `to_come`: due on that day or later.
 * - `lost`: no routine visit for longer than `lostAfterDays`; contact is lost, it is not late.
 * - `no_plan`: seen, but no interval has been agreed.
 * - `not_started`: no routine visit since it came, so no clock runs.
 */
export type DueState = "over" | "past" | "to_come" | "lost" | "no_plan" | "not_started";

/** When one horse is next due, on the day of the list. */
export interface DueDate {
  readonly horseId: string;
  /** Yard where the horse stands on that day; null when it is not known. */
  readonly yardId: string | null;
  readonly state: DueState;
  /** Last routine visit, or first visit of a new horse: the day the clock started; null when none. */
  readonly lastRoutine: string | null;
  /** Last visit for any reason; null when none. */
  readonly lastSeen: string | null;
  /** Days agreed from `lastRoutine` on; null without a plan. */
  readonly plannedDays: number | null;
  readonly dueOn: string | null;
  /** Days from the day of the list to the date: below 0 is past it. Null without a date. */
  readonly daysLeft: number | null;
}
