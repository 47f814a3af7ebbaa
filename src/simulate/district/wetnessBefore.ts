import { dayNumber } from "../../study/dayNumber.js";
import { grouped } from "../../study/grouped.js";
import type { DistrictDay } from "./districtWeather.js";

/** What a foot stood in during the fortnight up to a day. */
export interface Wetness {
  readonly rainMm14d: number;
  readonly dewNights14d: number;
}

/**
 * Wetness of the 14 gauge days up to and including a date, for a gauge whose readings end on their date; a function of gauge and
 * date over the true weather, without its gaps.
 *
 * Errors: throws for a gauge or a day the weather does not hold.
 */
export function wetnessBefore(weather: readonly DistrictDay[]): (gaugeId: string, date: string) => Wetness {
  const gauges = grouped(weather, (day) => day.gaugeId);
  return (gaugeId, date) => {
    const days = gauges.get(gaugeId) ?? [];
    const place = dayNumber(date)! - dayNumber(days[0]?.date ?? date)!;
    const window = days.slice(place - 13, place + 1);
    if (window.length !== 14) throw new RangeError(`No fortnight of weather before ${date} at ${gaugeId}`);
    const tenths = window.reduce((sum, day) => sum + Math.round(day.rainMm * 10), 0);
    return { rainMm14d: tenths / 10, dewNights14d: window.filter((day) => day.dewPointC >= day.tempMinC).length };
  };
}
