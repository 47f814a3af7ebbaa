import { dateOfDay } from "../study/dateOfDay.js";
import { dayNumber } from "../study/dayNumber.js";
import type { GaugeDay } from "../study/GaugeDay.js";
import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import { StudyError } from "../study/StudyError.js";
import { byVisit } from "./byVisit.js";
import { lastAdmissibleDay } from "./lastAdmissibleDay.js";
import { stayAt } from "./stayAt.js";

/** Damp that no rain gauge holds, before one visit to one horse. */
export interface DampBeforeVisit {
  readonly horseId: string;
  readonly visitDate: string;
  readonly yardId: string | null;
  readonly gaugeId: string | null;
  /** Days of the window. */
  readonly windowDays: number;
  /** Days whose dew point was not below their lowest temperature; null when a day of the window lacks either. */
  readonly dewDays: number | null;
  /** Mean of the daily humidity, %; null when a day of the window lacks it. */
  readonly humidityPct: number | null;
}

/**
 * Dew and humidity before every visit, one row for each horse and visit day, by day and horse: ground is wet without rain, too.
 *
 * Method: the gauge of the yard where the horse stood that day, over the days that end on the last admissible one (`lastAdmissibleDay`).
 * A day counts as dewy when the air cooled to its mean dew point, a rule of thumb: dew also depends on wind and cloud.
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
  const stays = grouped(study.horses, (stay) => stay.horseId);
  const gaugeOf = new Map(study.yards.map((yard) => [yard.yardId, yard.gaugeId]));
  const days = new Map(study.weather.map((day) => [`${day.gaugeId}\n${day.date}`, day]));
  const known = new Map<string, Pick<DampBeforeVisit, "dewDays" | "humidityPct">>();
  const visits = grouped(study.visits, ({ horseId, visitDate }) => `${horseId}\n${visitDate}`);
  const rows = [...visits.values()].map(([visit]): DampBeforeVisit => {
    const { horseId, visitDate } = visit!;
    const yardId = stayAt(stays.get(horseId) ?? [], horseId, visitDate)?.yardId ?? null;
    const gaugeId = yardId === null ? null : (gaugeOf.get(yardId) ?? null);
    const last = lastAdmissibleDay(visitDate, study.settings.gaugeDay);
    const key = `${gaugeId ?? ""}\n${last}`;
    const damp = known.get(key) ?? dampOf(windowOf(days, gaugeId, last, windowDays));
    known.set(key, damp);
    return { horseId, visitDate, yardId, gaugeId, windowDays, ...damp };
  });
  return rows.sort(byVisit);
}

function windowOf(
  days: ReadonlyMap<string, GaugeDay>,
  gaugeId: string | null,
  last: string,
  windowDays: number,
): (GaugeDay | undefined)[] {
  const lastDay = dayNumber(last)!;
  return Array.from({ length: windowDays }, (_, back) => days.get(`${gaugeId ?? ""}\n${dateOfDay(lastDay - back)}`));
}

function dampOf(window: readonly (GaugeDay | undefined)[]): Pick<DampBeforeVisit, "dewDays" | "humidityPct"> {
  const dewy = window.map((day) => {
    const [dew, low] = [day?.dewPointC ?? null, day?.tempMinC ?? null];
    return dew === null || low === null ? null : dew >= low;
  });
  const humidity = window.map((day) => day?.humidityPct ?? null).filter((value) => value !== null);
  return {
    dewDays: dewy.includes(null) ? null : dewy.filter((is) => is).length,
    humidityPct: humidity.length < window.length ? null : humidity.reduce((sum, value) => sum + value, 0) / window.length,
  };
}
