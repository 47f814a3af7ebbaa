import { dateOfDay } from "../study/dateOfDay.js";
import { dayNumber } from "../study/dayNumber.js";
import type { GaugeDay } from "../study/GaugeDay.js";
import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import { StudyError } from "../study/StudyError.js";
import { dewDays } from "./dewDays.js";
import { oneADay } from "./oneADay.js";
import { visitGauges } from "./visitGauges.js";

/** Damp that no rain gauge holds, before one visit to one horse. */
export interface DampBeforeVisit {
  readonly horseId: string;
  readonly visitDate: string;
  readonly yardId: string | null;
  readonly gaugeId: string | null;
  /** Days of the window. */
  readonly windowDays: number;
  /** Days whose dew point was not below their lowest temperature; null when it is not known of a day of the window. */
  readonly dewDays: number | null;
  /** Mean of the daily humidity, %; null when a day of the window lacks it. */
  readonly humidityPct: number | null;
}

/**
 * Dew and humidity before every visit, one row for each horse and visit day, by day and horse: ground is wet without rain, too.
 *
 * Method: the gauge of the yard where the horse stood that day, over the days that end on the last admissible one (`visitGauges`); dewy days as
 * in `dewDays`.
 *
 * Missing: null without a yard, a gauge or a complete window; a part of a window is never scaled up.
 *
 * Errors: `bad_window` when the window is no whole number of days from 1 on.
 *
 * Source: common practice, no source.
 */
export function dampBeforeVisits(study: Study, windowDays = 14): DampBeforeVisit[] {
  if (!(Number.isSafeInteger(windowDays) && windowDays >= 1)) {
    throw new StudyError(
      "bad_window",
      `A window of ${windowDays} days makes no sense.`,
      "Give a whole number of days, 1 or more.",
    );
  }
  const gauges = new Map([...grouped(study.weather, (day) => day.gaugeId)].map(([id, rows]) => [id, dampDays(rows)]));
  const known = new Map<string, Pick<DampBeforeVisit, "dewDays" | "humidityPct">>();
  return visitGauges(study).map(({ horseId, visitDate, yardId, gaugeId, lastRainDay }) => {
    const key = `${gaugeId ?? ""}\n${lastRainDay}`;
    const damp = known.get(key) ?? dampOf(windowOf(gauges.get(gaugeId ?? ""), lastRainDay, windowDays));
    known.set(key, damp);
    return { horseId, visitDate, yardId, gaugeId, windowDays, ...damp };
  });
}

interface DampDay {
  readonly dew: boolean | null;
  readonly humidityPct: number | null;
}

function dampDays(rows: readonly GaugeDay[]): ReadonlyMap<string, DampDay> {
  const humidity = oneADay(rows, ({ humidityPct }) => humidityPct);
  return new Map(dewDays(rows).map(({ date, dew }) => [date, { dew, humidityPct: humidity(date) }]));
}

function windowOf(days: ReadonlyMap<string, DampDay> | undefined, last: string, windowDays: number): (DampDay | undefined)[] {
  const lastDay = dayNumber(last)!;
  return Array.from({ length: windowDays }, (_, back) => days?.get(dateOfDay(lastDay - back)));
}

function dampOf(window: readonly (DampDay | undefined)[]): Pick<DampBeforeVisit, "dewDays" | "humidityPct"> {
  const dewy = window.map((day) => day?.dew ?? null);
  const humidity = window.map((day) => day?.humidityPct ?? null).filter((value) => value !== null);
  return {
    dewDays: dewy.includes(null) ? null : dewy.filter((is) => is).length,
    humidityPct: humidity.length < window.length ? null : humidity.reduce((sum, value) => sum + value, 0) / window.length,
  };
}
