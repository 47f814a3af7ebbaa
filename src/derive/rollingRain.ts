import { StudyError } from "../study/StudyError.js";
import { dailyRain, type RainReading } from "./dailyRain.js";

/** Rain of the days up to and including one date. */
export interface RollingRain {
  /** Last day of the window. */
  readonly date: string;
  /** Total of the window, mm; null when any of its days has no usable reading. */
  readonly rainMm: number | null;
  /** Days of the window without a usable reading. */
  readonly daysMissing: number;
  /** A total of several days lies in the window. */
  readonly accumulated: boolean;
}

/**
 * Rain totals of one gauge over a moving window, one row for each calendar day from its first to its last row.
 *
 * Method: sum over the `windowDays` days that end on the date, exact in thousandths of a millimetre.
 *
 * Missing: one day without a usable reading makes the total null, and so do days before the first row; see `dailyRain`.
 *
 * Errors: `bad_window` when the window is no whole number of days from 1 on; `several_gauges`; `bad_rain`; `not_a_date`.
 */
export function rollingRain(days: readonly RainReading[], windowDays: number): RollingRain[] {
  if (!(Number.isSafeInteger(windowDays) && windowDays >= 1)) {
    throw new StudyError(
      "bad_window",
      `A window of ${windowDays} days cannot be summed.`,
      "Give a whole number of days, 1 or more.",
    );
  }
  const record = dailyRain(days);
  let [sum, missing, accumulations] = [0, 0, 0];
  return record.map((day, place) => {
    sum += day.rainMicrometres ?? 0;
    missing += day.rainMicrometres === null ? 1 : 0;
    accumulations += day.accumulated ? 1 : 0;
    const gone = record[place - windowDays];
    if (gone !== undefined) {
      sum -= gone.rainMicrometres ?? 0;
      missing -= gone.rainMicrometres === null ? 1 : 0;
      accumulations -= gone.accumulated ? 1 : 0;
    }
    const daysMissing = missing + Math.max(0, windowDays - place - 1);
    return { date: day.date, rainMm: daysMissing === 0 ? sum / 1000 : null, daysMissing, accumulated: accumulations > 0 };
  });
}
