import { dateOfDay } from "../study/dateOfDay.js";
import type { GaugeDayRule } from "../study/Settings.js";
import { requiredDay } from "./requiredDay.js";

/**
 * Date of the last rain reading that holds no rain from after the day of a visit began: the newest reading an exposure may use.
 *
 * Method: a reading that ends on its date, taken in the morning, covers the day before, so the reading of the visit day itself is
 * admissible. A reading that starts on its date, or covers the calendar day, runs on past the visit, so the last one is that of the
 * day before. There is no world-wide rule for the hour of a gauge day, so it is a setting of the study.
 *
 * Errors: `not_a_date`.
 *
 * Source: definition. Practice differs: the Australian Bureau of Meteorology dates the 24 hours to 9 am by their end; the United
 * Kingdom's 09-09 day is traditionally thrown back to the date on which it begins.
 */
export function lastAdmissibleDay(visitDate: string, rule: GaugeDayRule): string {
  const visitDay = requiredDay(visitDate);
  return rule === "ends_on_date" ? visitDate : dateOfDay(visitDay - 1);
}
