import { dateOfDay } from "../../study/dateOfDay.js";
import { districtCalendar } from "./districtCalendar.js";
import { districtYards } from "./districtYards.js";

/**
 * The day nearest to a wanted one on which the farrier comes to a yard, not before `earliest` and not over the turn of the year; of
 * two equally near days, the later one.
 */
export function farrierDay(yardId: string, wanted: number, earliest: number): number {
  const weekdays = districtYards.find((yard) => yard.yardId === yardId)?.weekdays ?? [];
  for (let away = 0; away < 40; away++) {
    for (const day of [wanted + away, wanted - away]) {
      if (day >= earliest && weekdays.includes(weekday(day)) && !closed(day)) return day;
    }
  }
  throw new RangeError(`The farrier never comes to ${yardId}`);
}

/** 0 Sunday to 6 Saturday; day 0 was a Thursday. */
function weekday(day: number): number {
  return (day + 4) % 7;
}

function closed(day: number): boolean {
  const monthDay = dateOfDay(day).slice(5);
  return monthDay >= districtCalendar.closedFrom || monthDay <= districtCalendar.closedTo;
}
