import type { Column } from "./Column.js";

const notRecorded = "not recorded";

/** Columns of `weather.csv`: one row per gauge per day. */
// prettier-ignore
/** @private */
export const weatherColumns = [
  { name: "gauge_id", title: "Gauge", meaning: "The gauge, as named in yards.csv.", type: "id", unit: null, level: "gauge-day", required: true, missing: "row belongs to no gauge" },
  { name: "date", title: "Date", meaning: "Date written beside the reading; study.json says which 24 hours it covers.", type: "date", unit: null, level: "gauge-day", required: true, missing: "row cannot be placed in time" },
  { name: "rain_mm", title: "Rain", meaning: "Rain of the gauge day.", type: "number", unit: "mm", level: "gauge-day", required: false, missing: "no reading; never zero", soft: [0, 120], hard: [0, 1825], source: "hard limit: WMO weather and climate extremes archive, greatest 24-hour rain, 1,825 mm, Foc-Foc, 7-8 January 1966" },
  { name: "flag", title: "Flag", meaning: "trace: too little to measure, rain 0. accumulated: total of several days, used for none of them. missing: no reading.", type: "code", unit: null, level: "gauge-day", required: false, missing: "an ordinary reading", values: ["trace", "accumulated", "missing"] },
  { name: "temp_min_c", title: "Lowest temperature", meaning: "Lowest air temperature of the day.", type: "number", unit: "degC", level: "gauge-day", required: false, missing: notRecorded, soft: [-25, 30], hard: [-90, 60], source: "common practice, no source" },
  { name: "temp_max_c", title: "Highest temperature", meaning: "Highest air temperature of the day.", type: "number", unit: "degC", level: "gauge-day", required: false, missing: notRecorded, soft: [-15, 40], hard: [-90, 60], source: "common practice, no source" },
  { name: "humidity_pct", title: "Humidity", meaning: "Mean relative humidity of the day.", type: "number", unit: "%", level: "gauge-day", required: false, missing: notRecorded, hard: [0, 100], source: "a percentage" },
  { name: "dew_point_c", title: "Dew point", meaning: "Mean dew point of the day.", type: "number", unit: "degC", level: "gauge-day", required: false, missing: notRecorded, soft: [-30, 28], hard: [-90, 40], source: "common practice, no source" },
] as const satisfies readonly Column[];
