import { feetOverTimeChart } from "../../src/chart/feetOverTimeChart.js";
import { frontHindShapeChart } from "../../src/chart/frontHindShapeChart.js";
import { funnelChart } from "../../src/chart/funnelChart.js";
import { intervalKeepingChart } from "../../src/chart/intervalKeepingChart.js";
import { prevalenceByBandChart } from "../../src/chart/prevalenceByBandChart.js";
import { rainAndThrushChart, type MonthRow } from "../../src/chart/rainAndThrushChart.js";
import { climateCharts } from "./climateCharts.js";
import type { Chart } from "../../src/chart/Chart.js";
import { funnelCurve, funnelOptions, funnelRows } from "./funnel.js";
import { shapeCharts } from "./shapeCharts.js";

/** Freezes a value all the way down, so that changing it throws. */
export function frozen<Value>(value: Value): Value {
  if (typeof value === "object" && value !== null) {
    Object.values(value).forEach(frozen);
    Object.freeze(value);
  }
  return value;
}

const none = { estimate: null, lower: null, upper: null, cases: 0, n: 0 };
const share = (cases: number, n: number, lower: number, upper: number) => ({ estimate: cases / n, lower, upper, cases, n });

/** Months with everything that can happen to one: measured, too few, nobody seen, no rain total, left out. */
export const months: readonly MonthRow[] = frozen([
  { month: "2024-11", ...share(12, 40, 0.181, 0.454), rainMm: 131.2 },
  { month: "2024-12", ...share(18, 45, 0.27, 0.545), rainMm: 160.4 },
  { month: "2025-01", ...share(1, 3, 0.061, 0.792), rainMm: 99, tooFew: true },
  { month: "2025-02", ...none, rainMm: 80 },
  { month: "2025-04", ...share(6, 44, 0.064, 0.268), rainMm: null },
  { month: "2025-05", ...share(3, 41, 0.025, 0.194), rainMm: 0 },
]);
export const rainOptions = frozen({ level: 0.95, unit: "horses", caseDefinition: "grade 1 or more" });

export const yards = frozen([
  { yardId: "Brook Farm", early: 3, kept: 40, late: 12 },
  {
    yardId: 'Withy & "Bottom" <Livery>, the yard with the longest name in the whole of the lower valley',
    early: 0,
    kept: 20,
    late: 31,
  },
  { yardId: "Top", early: 1, kept: 1, late: 0, tooFew: true },
]);
export const keepingOptions = frozen({ toleranceDays: 7 });

export const horses = frozen([
  { horseId: "Bess", frontIndex: 0.98, hindIndex: 0.91 },
  { horseId: "Captain", frontIndex: 1.01, hindIndex: 0.95 },
  { horseId: "Dot", frontIndex: 0.94, hindIndex: 0.97 },
  { horseId: "Ember", frontIndex: 0.95, hindIndex: 0.95 },
  { horseId: "Flint", frontIndex: null, hindIndex: 0.93 },
]);
export const shapeOptions = frozen({ medians: { front: 0.97, hind: 0.95 }, taken: "after trimming, last visit" });

export const bands = frozen([
  { band: "0 to 9", ...share(20, 300, 0.043, 0.1) },
  { band: "10 to 49", ...share(90, 400, 0.187, 0.268) },
  { band: "50 and more", ...share(2, 4, 0.15, 0.85), tooFew: true },
  { band: "not known", ...none },
]);
export const bandOptions = frozen({
  bandTitle: "Rain in the 14 days before the visit (mm)",
  level: 0.9,
  unit: "feet seen",
  finding: "thrush",
  caseDefinition: "grade 1 or more",
});

const feet = ["near fore", "off fore", "near hind", "off hind"];

export const looks = frozen(
  feet.flatMap((foot, at) => [
    { visit: "6 Jan 2025", foot, grade: at, notSeen: false, vet: at === 3 },
    { visit: "17 Feb 2025", foot, grade: null, notSeen: at === 0, vet: false },
  ]),
);

/** Every kind of chart, and each with one row and with none. */
export const charts: readonly (readonly [string, Chart])[] = [
  ["rain and thrush", rainAndThrushChart(months, rainOptions)],
  ["rain and thrush, one month", rainAndThrushChart(months.slice(0, 1), rainOptions)],
  ["rain and thrush, no month", rainAndThrushChart([], rainOptions)],
  ["rain and thrush, ten years", rainAndThrushChart(tenYears(), rainOptions)],
  [
    "rain and thrush, no rain",
    rainAndThrushChart(
      months.map((row) => ({ ...row, rainMm: null })),
      rainOptions,
    ),
  ],
  [
    "rain and thrush, no share",
    rainAndThrushChart(
      months.map((row) => ({ ...row, ...none })),
      rainOptions,
    ),
  ],
  ["funnel", funnelChart(funnelRows, funnelCurve, funnelOptions)],
  ["funnel, no group", funnelChart([], [], funnelOptions)],
  ["interval keeping", intervalKeepingChart(yards, keepingOptions)],
  ["interval keeping, one yard", intervalKeepingChart(yards.slice(0, 1), keepingOptions)],
  ["interval keeping, no yard", intervalKeepingChart([], keepingOptions)],
  ["front and hind shape", frontHindShapeChart(horses, shapeOptions)],
  ["front and hind shape, one horse", frontHindShapeChart(horses.slice(0, 1), { ...shapeOptions, medians: null })],
  ["front and hind shape, no horse", frontHindShapeChart([], { ...shapeOptions, medians: null })],
  ["feet over time", feetOverTimeChart(looks, { feet })],
  ["feet over time, one visit", feetOverTimeChart(looks.slice(0, 1), { feet })],
  ["feet over time, no visit", feetOverTimeChart([], { feet })],
  ["prevalence by band", prevalenceByBandChart(bands, bandOptions)],
  ["prevalence by band, one band", prevalenceByBandChart(bands.slice(0, 1), bandOptions)],
  ["prevalence by band, no band", prevalenceByBandChart([], bandOptions)],
  ...shapeCharts,
  ...climateCharts,
];

function tenYears(): MonthRow[] {
  return Array.from({ length: 120 }, (_, index) => ({
    month: `${2015 + Math.floor(index / 12)}-${String((index % 12) + 1).padStart(2, "0")}`,
    ...share(10 + (index % 7), 40, 0.1, 0.6),
    rainMm: 40 + (index % 12) * 10,
  }));
}
