import { districtCalendar } from "./districtCalendar.js";
import type { DistrictDay } from "./districtWeather.js";
import type { TextLine } from "./TextLine.js";

/**
 * Lines of weather.csv as the gauges were read: traces flagged, and one gauge idle for some days, whose next reading holds the total
 * of all of them.
 */
export function weatherLines(weather: readonly DistrictDay[]): TextLine[] {
  const { gaugeId, from, readOn } = districtCalendar.idleGauge;
  const idle = (day: DistrictDay) => day.gaugeId === gaugeId && day.date >= from && day.date <= readOn;
  const tenths = weather.filter(idle).reduce((sum, day) => sum + Math.round(day.rainMm * 10), 0);
  return weather.map((day) => {
    const flag = idle(day) ? (day.date === readOn ? "accumulated" : "missing") : day.trace ? "trace" : "";
    const rain_mm = flag === "accumulated" ? tenths / 10 : flag === "missing" ? "" : day.rainMm;
    return {
      cells: {
        gauge_id: day.gaugeId,
        date: day.date,
        rain_mm,
        flag,
        temp_min_c: day.tempMinC,
        temp_max_c: day.tempMaxC,
        humidity_pct: day.humidityPct,
        dew_point_c: day.dewPointC,
      },
    };
  });
}
