import { dayNumber } from "../study/dayNumber.js";
import { StudyError } from "../study/StudyError.js";

/**
 * Day number of a date that must be one.
 *
 * Errors: `not_a_date`.
 *
 * @private
 */
export function requiredDay(date: string): number {
  const day = dayNumber(date);
  if (day !== null) return day;
  throw new StudyError("not_a_date", `"${date}" is no calendar day.`, "Give a day as YYYY-MM-DD.");
}
