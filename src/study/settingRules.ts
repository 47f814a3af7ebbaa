import { dayNumber } from "./dayNumber.js";
import type { Settings } from "./Settings.js";

/** What a setting may be: a test of the value and the words for what is expected. */
export interface SettingRule {
  readonly allows: (value: unknown) => boolean;
  readonly expected: string;
}

const MOST_DAYS = 3660;
const between = (value: unknown, low: number, high: number) => typeof value === "number" && value > low && value < high;
const whole = (value: unknown, low: number, high: number) =>
  Number.isInteger(value) && (value as number) >= low && (value as number) <= high;
const days = (low: number): SettingRule => ({
  allows: (value) => whole(value, low, MOST_DAYS),
  expected: `a whole number of days from ${low} to ${MOST_DAYS}`,
});
const proportion: SettingRule = { allows: (value) => between(value, 0, 1), expected: "a number between 0 and 1, such as 0.95" };
const degrees: SettingRule = {
  allows: (value) => typeof value === "number" && value >= 0 && value <= 90,
  expected: "a number of degrees from 0 to 90",
};
const oneOf = (...values: readonly unknown[]): SettingRule => ({
  allows: (value) => values.includes(value),
  expected: `one of ${values.join(", ")}`,
});

const exposureName = /^((rainMm|rainAnomalyMm|wetDays|dewDays|surplusDays)[1-9]\d{0,2}d|apiMm[1-9]\d?(\.\d+)?pct|soilStorageMm)$/;
const adjustments: readonly string[] = [
  ...["season", "season_2", "end", "observer", "shod", "interval"],
  ...["ground", "bedding", "turnout", "surface_treated"],
];

/** The rule of every setting; `study.json` and `withSettings` are both held to it. */
export const settingRules: Readonly<Record<keyof Settings, SettingRule>> = {
  caseGrade: oneOf(1, 2, 3),
  level: proportion,
  gaugeDay: oneOf("ends_on_date", "starts_on_date", "calendar_day"),
  rainWindowsDays: {
    allows: (value) => Array.isArray(value) && value.length > 0 && value.every((item) => days(1).allows(item)),
    expected: "a list of numbers of days, such as [7, 14, 28]",
  },
  apiDecayPerDay: proportion,
  apiWarmUpDays: days(0),
  dailyRainLimitMm: {
    allows: (value) => value === null || (typeof value === "number" && value > 0 && value <= 1825),
    expected: "a number of millimetres above 0 and up to 1825, or null for none",
  },
  primaryExposure: {
    allows: (value) => typeof value === "string" && exposureName.test(value),
    expected:
      "the name of an exposure, such as rainMm14d, rainAnomalyMm28d, wetDays7d, dewDays14d, surplusDays14d, apiMm90pct or soilStorageMm",
  },
  exposurePer: {
    allows: (value) => typeof value === "number" && value > 0 && value <= 1000,
    expected: "a number of units above 0 and up to 1000, such as 10",
  },
  adjustFor: {
    allows: (value) =>
      Array.isArray(value) && value.every((item) => adjustments.includes(item as string)) && new Set(value).size === value.length,
    expected: `a list of ${adjustments.join(", ")}, each once`,
  },
  toleranceDays: days(0),
  lostAfterDays: days(1),
  minimumHorses: { allows: (value) => whole(value, 1, 1_000_000), expected: "a whole number from 1" },
  contractedFrogIndex: { allows: (value) => between(value, 0, 10), expected: "a number above 0, such as 0.67" },
  underrunGapDeg: degrees,
  unevenPairDeg: degrees,
  asOf: {
    allows: (value) => value === null || (typeof value === "string" && dayNumber(value) !== null),
    expected: "a calendar day such as 2024-03-05, or null for the day of the last visit",
  },
};
