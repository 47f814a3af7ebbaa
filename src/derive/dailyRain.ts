import { dateOfDay } from "../study/dateOfDay.js";
import type { GaugeDay } from "../study/GaugeDay.js";
import { StudyError } from "../study/StudyError.js";
import { requiredDay } from "./requiredDay.js";

/** A reading of rain as far as a series needs it: a row of `weather.csv`, or a date and an amount alone. */
export interface RainReading {
  readonly date: string;
  readonly rainMm: number | null;
  readonly flag?: GaugeDay["flag"];
  readonly gaugeId?: string;
}

/** One calendar day of a gauge as an exposure may use it. */
export interface DailyRain {
  readonly date: string;
  /** Rain in thousandths of a millimetre, so that sums are exact; null when the day has no usable reading. */
  readonly rainMicrometres: number | null;
  /** The row of this day holds the total of several days. */
  readonly accumulated: boolean;
}

/**
 * Every calendar day of one gauge from its first to its last row, in order and without gaps; empty for no rows.
 *
 * Missing: a day without a row, without a value or flagged as missing is null, never 0. A trace is 0. A total of several days is
 * used for none of them: not for its own day, and the days before it stay without a reading. Two rows of one day that differ are
 * no reading.
 *
 * Errors: `several_gauges` when the rows are not of one gauge; `bad_rain` for rain below 0 mm or no number; `not_a_date`.
 */
export function dailyRain(days: readonly RainReading[]): DailyRain[] {
  const byDay = new Map<number, Omit<DailyRain, "date">>();
  const gaugeId = days[0]?.gaugeId;
  for (const row of days) {
    if (row.gaugeId !== gaugeId) {
      throw new StudyError(
        "several_gauges",
        `Rain of gauge ${gaugeId ?? ""} and of gauge ${row.gaugeId ?? ""} was given as one series.`,
        "Pick the rows of one gauge first.",
      );
    }
    const day = requiredDay(row.date);
    const reading = { rainMicrometres: micrometres(row), accumulated: row.flag === "accumulated" };
    const earlier = byDay.get(day);
    const differs = earlier !== undefined && earlier.rainMicrometres !== reading.rainMicrometres;
    byDay.set(day, differs ? { rainMicrometres: null, accumulated: earlier.accumulated || reading.accumulated } : reading);
  }
  if (byDay.size === 0) return [];
  let [first, last] = [Infinity, -Infinity];
  for (const day of byDay.keys()) [first, last] = [Math.min(first, day), Math.max(last, day)];
  return Array.from({ length: last - first + 1 }, (_, place) => ({
    date: dateOfDay(first + place),
    ...(byDay.get(first + place) ?? { rainMicrometres: null, accumulated: false }),
  }));
}

function micrometres({ date, rainMm, flag = null }: RainReading): number | null {
  if (flag === "trace") return 0;
  if (flag !== null || rainMm === null) return null;
  if (!(rainMm >= 0 && rainMm < Infinity)) {
    throw new StudyError(
      "bad_rain",
      `Rain of ${rainMm} mm on ${date} makes no sense.`,
      "Give 0 mm or more, or null for no reading.",
    );
  }
  return Math.round(rainMm * 1000);
}
