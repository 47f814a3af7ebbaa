import type { Column } from "../../study/Column.js";
import { dateOfDay } from "../../study/dateOfDay.js";
import { dayNumber } from "../../study/dayNumber.js";
import type { GaugeDay } from "../../study/GaugeDay.js";
import { weatherColumns } from "../../study/weatherColumns.js";
import type { Fault } from "../report/Fault.js";
import { messages } from "../report/messages.js";
import type { Draft } from "../table/Draft.js";
import type { PlacedReading, StationDay } from "./StationDay.js";

/** Reports a fault of one reading. */
export type ReportReading = (fault: Fault, reading: PlacedReading) => void;

const MISSING = -9999;
const TENTHS = 10;

const columnOf = (name: string): Column | undefined => weatherColumns.find((column) => column.name === name);

/**
 * Gauge days from the readings of a GHCN-Daily file, in the order of `days`. PRCP, TMIN and TMAX are tenths (of mm, of degrees C), -9999 is missing. M-flag T is a
 * trace, 0 mm; P is missing and only presumed zero, so missing. A several-day total (MDPR over DAPR days) puts no rain on any day it
 * covers: its last day is flagged accumulated, and a daily reading inside it is blanked. ADPT is the mean dew point in tenths of a degree, RHAV the mean
 * relative humidity in whole percent. Rain above `limitMm` a day is kept with a warning.
 *
 * Source: NOAA, GHCN-Daily readme.txt section III and readme-by_station.txt; ADPT and RHAV stand in newer readmes only and are from memory.
 */
export function ghcnGaugeDays(
  file: string,
  days: ReadonlyMap<string, StationDay>,
  gaugeOf: (station: string) => string,
  report: ReportReading,
  limitMm: number | null = null,
): GaugeDay[] {
  const covered = coveredDays(days, report);
  const found: GaugeDay[] = [];
  for (const [key, { station, date, readings }] of days) {
    const first = [...readings.values()].find(({ element }) => element !== "DAPR");
    if (first === undefined) continue;
    const line = (readings.get("PRCP") ?? first).line;
    const day: Draft<GaugeDay> = {
      ...{ file, line, gaugeId: gaugeOf(station), date, rainMm: null, flag: null },
      ...{ tempMinC: null, tempMaxC: null, humidityPct: null, dewPointC: null },
    };
    rain(day, readings, covered.has(key), report);
    if (day.rainMm !== null && limitMm !== null && day.rainMm > limitMm) {
      report(messages.rainOverLimit(day.rainMm, limitMm), readings.get("PRCP") ?? first);
    }
    day.tempMinC = measured(readings.get("TMIN"), "temp_min_c", report);
    day.tempMaxC = measured(readings.get("TMAX"), "temp_max_c", report);
    if (day.tempMinC !== null && day.tempMaxC !== null && day.tempMinC > day.tempMaxC) {
      report(messages.temperaturesCrossed(), readings.get("TMIN") ?? first);
      day.tempMinC = null;
      day.tempMaxC = null;
    }
    day.dewPointC = measured(readings.get("ADPT"), "dew_point_c", report);
    day.humidityPct = measured(readings.get("RHAV"), "humidity_pct", report, 1);
    found.push(day);
  }
  return found;
}

function rain(day: Draft<GaugeDay>, readings: StationDay["readings"], covered: boolean, report: ReportReading): void {
  const [daily, total] = [readings.get("PRCP"), readings.get("MDPR")];
  if (total !== undefined) {
    day.flag = "accumulated";
    report(messages.accumulated(String(total.value / TENTHS)), total);
    return;
  }
  if (daily === undefined) return;
  if (daily.measurementFlag === "P") {
    report(messages.ghcnPresumedZero(), daily);
    day.flag = "missing";
  } else if (covered) {
    report(messages.accumulatedAround(), daily);
    day.flag = "missing";
  } else if (daily.measurementFlag === "T") {
    day.flag = "trace";
    day.rainMm = 0;
  } else {
    day.rainMm = measured(daily, "rain_mm", report);
    if (day.rainMm === null) day.flag = "missing";
  }
}

function measured(
  reading: PlacedReading | undefined,
  columnName: string,
  report: ReportReading,
  divisor = TENTHS,
): number | null {
  const column = columnOf(columnName);
  if (reading === undefined || column === undefined) return null;
  if (reading.value === MISSING) {
    report(messages.ghcnMissing(reading.element), reading);
    return null;
  }
  const value = reading.value / divisor;
  const [low, high] = column.hard ?? [-Infinity, Infinity];
  if (value < low || value > high) {
    report(messages.badCell(column, String(value), value < low ? "too_small" : "too_big"), reading);
    return null;
  }
  const [least, most] = column.soft ?? [-Infinity, Infinity];
  if (value < least || value > most) report(messages.unusual(column, String(value)), reading);
  return value;
}

/** Days before the last one of every several-day total, as keys of `days`. */
function coveredDays(days: ReadonlyMap<string, StationDay>, report: ReportReading): ReadonlySet<string> {
  const covered = new Set<string>();
  for (const { station, date, readings } of days.values()) {
    const total = readings.get("MDPR");
    if (total === undefined) continue;
    const count = readings.get("DAPR")?.value ?? 0;
    if (count < 2) report(messages.ghcnDaysUnknown(), total);
    const last = dayNumber(date) ?? 0;
    for (let back = 1; back < Math.min(count, 366); back++) covered.add(`${station} ${dateOfDay(last - back)}`);
  }
  return covered;
}
