import { counted } from "../answer/words/counted.js";
import { longDate } from "../answer/words/longDate.js";
import { asOfDate } from "../derive/asOfDate.js";
import type { DueDate } from "../derive/DueDate.js";
import { dueDates } from "../derive/dueDates.js";
import { requiredDay } from "../derive/requiredDay.js";
import type { Study } from "../study/Study.js";
import { nameUuid } from "./calendar/nameUuid.js";
import type { CalendarEvent } from "./toCalendar.js";

// Of this project alone; any fixed UUID would do.
const namespace = "6a1f6c52-9f0e-4a0e-8f39-5f7c2b9d1e64";

/**
 * One event for each horse with a date, by date: on its due day, or on the day of the list when that is past. An event belongs to the horse: a
 * list written later moves it on instead of adding another. Named by the horse within the study, so a study renamed makes new ones.
 */
export function dueEvents(study: Study): CalendarEvent[] {
  const asOf = asOfDate(study);
  if (asOf === null) return [];
  return dueDates(study).flatMap((row): CalendarEvent[] => {
    if (row.dueOn === null || row.daysLeft === null || row.state === "lost") return [];
    const past = row.daysLeft < 0;
    const head = row.state === "over" ? "Over" : past ? "Past its date" : "Due";
    return [
      {
        uid: nameUuid(namespace, JSON.stringify([study.name, row.horseId])),
        sequence: Math.max(0, requiredDay(asOf)),
        date: past ? asOf : row.dueOn,
        summary: `${head}: ${row.horseId}`,
        description: `${whenDue(row)} Describes the diary; no advice to change an interval.`,
        location: row.yardId,
      },
    ];
  });
}

function whenDue({ dueOn, daysLeft, plannedDays, lastRoutine }: DueDate): string {
  if (dueOn === null || lastRoutine === null || plannedDays === null || daysLeft === null) return "";
  const days = `${counted(plannedDays, "day")} after the routine visit of ${longDate(lastRoutine)}`;
  return daysLeft < 0
    ? `Was due on ${longDate(dueOn)}, ${counted(-daysLeft, "day")} before this list. ${days}.`
    : `Due on ${longDate(dueOn)}: ${days}.`;
}
