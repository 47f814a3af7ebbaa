import type { GaugeDay } from "../study/GaugeDay.js";
import { grouped } from "../study/grouped.js";
import { dailyRain } from "./dailyRain.js";

/** Rain of one calendar month. */
export interface MonthRain {
  /** `YYYY-MM`. */
  readonly month: string;
  /** Mean over the gauges whose month is complete; null when none is. */
  readonly rainMm: number | null;
  /** Gauges with every day of the month. */
  readonly gauges: number;
}

/**
 * Rain of every calendar month with a reading, in order.
 *
 * Method: the total of each gauge over the days of the month, then the plain mean over the gauges.
 *
 * Missing: a gauge whose month lacks a day is left out of that month, never summed in part. A total of several days makes its month incomplete.
 */
export function monthlyRain(weather: readonly GaugeDay[]): MonthRain[] {
  const totals = new Map<string, number[]>();
  for (const rows of grouped(weather, (day) => day.gaugeId).values()) {
    for (const [month, days] of grouped(dailyRain(rows), (day) => day.date.slice(0, 7))) {
      const known = days.flatMap((day) => (day.rainMicrometres === null ? [] : [day.rainMicrometres]));
      const complete = totals.get(month) ?? [];
      if (known.length === daysIn(month)) complete.push(known.reduce((sum, value) => sum + value, 0) / 1000);
      totals.set(month, complete);
    }
  }
  return [...totals]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([month, complete]) => ({
      month,
      rainMm: complete.length === 0 ? null : complete.reduce((sum, value) => sum + value, 0) / complete.length,
      gauges: complete.length,
    }));
}

function daysIn(month: string): number {
  return new Date(Date.UTC(Number(month.slice(0, 4)), Number(month.slice(5)), 0)).getUTCDate();
}
