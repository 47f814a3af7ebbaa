import type { GaugeDay } from "../../study/GaugeDay.js";
import type { Source } from "../../study/Source.js";
import { messages } from "../report/messages.js";
import type { Draft } from "../table/Draft.js";
import type { ReportFault, RowRule } from "../table/RowRule.js";

/**
 * Rule of weather.csv: one row per gauge and day, over all weather files (`firstOf` remembers them). A trace is 0 mm with its flag; a total of
 * several days is used for none of them; what is marked missing is missing whatever stands beside it. An empty rain cell stays null. Rain above
 * `limitMm` a day is kept with a warning.
 */
export function weatherRule(
  firstOf: (key: string, source: Source) => Source | null,
  limitMm: number | null = null,
): RowRule<GaugeDay> {
  return {
    accepts(row, report) {
      const first = firstOf(JSON.stringify([row.gaugeId, row.date]), row);
      if (first !== null) {
        report(messages.duplicate("a reading of this gauge and day", first.file === row.file ? null : first.file, first.line));
        return false;
      }
      mendRain(row, report);
      const rain = row.rainMm;
      if (rain !== null && limitMm !== null && rain > limitMm) report(messages.rainOverLimit(rain, limitMm), "rain_mm");
      if (row.tempMinC !== null && row.tempMaxC !== null && row.tempMinC > row.tempMaxC) {
        report(messages.temperaturesCrossed(), "temp_min_c");
        row.tempMinC = null;
        row.tempMaxC = null;
      }
      return true;
    },
  };
}

function mendRain(row: Draft<GaugeDay>, report: ReportFault): void {
  const rain = row.rainMm;
  if (row.flag === "trace") {
    if (rain !== null && rain !== 0) report(messages.traceWithRain(rain), "rain_mm");
    row.rainMm = 0;
  } else if (row.flag === "missing") {
    if (rain !== null) report(messages.missingWithRain(rain), "rain_mm");
    row.rainMm = null;
  } else if (row.flag === "accumulated") {
    if (rain !== null) report(messages.accumulated(String(rain)), "rain_mm");
    row.rainMm = null;
  }
}
