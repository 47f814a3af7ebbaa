import type { GaugeDay } from "../study/GaugeDay.js";
import { dailyRain } from "./dailyRain.js";
import { dewPoint } from "./dewPoint.js";
import { oneADay } from "./oneADay.js";

/** Whether dew may have settled on one day. */
export interface DewDay {
  readonly date: string;
  /** Dew point of the day, degrees C. */
  readonly dewPointC: number | null;
  /** The lowest temperature was not above the dew point; null when either is not known. */
  readonly dew: boolean | null;
}

/**
 * Dew of one gauge, one row for each calendar day from its first to its last row: ground is wet without rain, too.
 *
 * Method: a day counts as dewy when the air cooled to its mean dew point or below it. The dew point is the recorded one, else worked out
 * (`dewPoint`) from the mean humidity and the mean of lowest and highest temperature. A rule of thumb: grass cools further than the
 * air at the thermometer, so that dew falls more often than this says, while wind and cloud prevent it. Below 0 degrees it
 * settles as hoar frost, which wets the ground when it thaws, and counts.
 *
 * Missing: null where the lowest temperature or the dew point is not known.
 *
 * Errors: `several_gauges`; `bad_humidity`, `bad_temperature`; `bad_rain`; `not_a_date`.
 *
 * Source: common practice, no source.
 */
export function dewDays(days: readonly GaugeDay[]): DewDay[] {
  const low = oneADay(days, ({ tempMinC }) => tempMinC);
  const dewPointOf = oneADay(days, (row) => {
    if (row.dewPointC !== null) return row.dewPointC;
    const { tempMinC, tempMaxC, humidityPct } = row;
    return tempMinC === null || tempMaxC === null ? null : dewPoint((tempMinC + tempMaxC) / 2, humidityPct);
  });
  return dailyRain(days).map(({ date }) => {
    const [tempMinC, dewPointC] = [low(date), dewPointOf(date)];
    return { date, dewPointC, dew: tempMinC === null || dewPointC === null ? null : tempMinC <= dewPointC };
  });
}
