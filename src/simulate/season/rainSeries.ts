import { EstimateError } from "../../estimate/EstimateError.js";
import { dateOfDay } from "../../study/dateOfDay.js";
import { dayNumber } from "../../study/dayNumber.js";
import { grouped } from "../../study/grouped.js";
import type { SeasonWeatherDay } from "./SeasonWeatherDay.js";

/**
 * For each gauge the rain of a day, the day before, and so on backwards, mm.
 *
 * Errors (of the functions returned): `too_few` for a day without a reading.
 */
export function rainSeries(
  weather: readonly SeasonWeatherDay[],
): ReadonlyMap<string, (day: number, count: number) => readonly number[]> {
  return new Map(
    [...grouped(weather, ({ gaugeId }) => gaugeId)].map(([gaugeId, days]) => {
      const rain = new Map(days.map(({ date, rainMm }) => [dayNumber(date), rainMm]));
      return [
        gaugeId,
        (day, count) => Array.from({ length: count }, (_, lag) => rain.get(day - lag) ?? missing(gaugeId, day - lag)),
      ];
    }),
  );
}

function missing(gaugeId: string, day: number): never {
  throw new EstimateError(
    "too_few",
    `${gaugeId} has no rain for ${dateOfDay(day)}.`,
    "Give every day from 41 days before the first visit to the last.",
  );
}
