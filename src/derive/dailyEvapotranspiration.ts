import type { GaugeDay } from "../study/GaugeDay.js";
import { dailyRain } from "./dailyRain.js";
import { hargreavesEvapotranspiration } from "./hargreavesEvapotranspiration.js";
import { oneADay } from "./oneADay.js";

/** Water that came and water that could go on one day. */
export interface WaterDay {
  readonly date: string;
  readonly rainMm: number | null;
  /** Reference evapotranspiration, mm. */
  readonly evapotranspirationMm: number | null;
}

/**
 * Rain and reference evapotranspiration of one gauge, one row for each calendar day from its first to its last row.
 *
 * Method: `dailyRain` and `hargreavesEvapotranspiration`. Where a gauge day is not a calendar day, rain and temperature of one date may
 * belong to hours that lie half a day apart.
 *
 * Missing: null without a usable reading of rain, without either temperature.
 *
 * Errors: `several_gauges`; `temperatures_crossed`; `bad_temperature`; `bad_latitude`; `bad_rain`; `not_a_date`.
 */
export function dailyEvapotranspiration(days: readonly GaugeDay[], latitudeDeg: number): WaterDay[] {
  const low = oneADay(days, ({ tempMinC }) => tempMinC);
  const high = oneADay(days, ({ tempMaxC }) => tempMaxC);
  return dailyRain(days).map(({ date, rainMicrometres }) => ({
    date,
    rainMm: rainMicrometres === null ? null : rainMicrometres / 1000,
    evapotranspirationMm: hargreavesEvapotranspiration({ tMinC: low(date), tMaxC: high(date), latitudeDeg, date }),
  }));
}
