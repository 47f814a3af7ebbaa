import type { Chart } from "../../src/chart/Chart.js";
import { forestChart } from "../../src/chart/forestChart.js";
import { observerDriftChart } from "../../src/chart/observerDriftChart.js";
import { prevalenceCurveChart } from "../../src/chart/prevalenceCurveChart.js";
import { ratioProfileChart } from "../../src/chart/ratioProfileChart.js";
import { recordFlowChart } from "../../src/chart/recordFlowChart.js";
import { yardMonthsChart } from "../../src/chart/yardMonthsChart.js";

export const forestRows = [
  { label: "Crude", estimate: 1.4, lower: 1.2, upper: 1.63, n: 1200 },
  { label: "Mixed model", estimate: 1.12, lower: 0.98, upper: 1.28, n: 1180, primary: true },
  { label: "No upper limit", estimate: 2, lower: 1.1, upper: Infinity, n: 40 },
  { label: "Not estimated", estimate: null, lower: null, upper: null, n: null },
];
export const forestOptions = { title: "From crude to adjusted", ratioTitle: "Odds ratio of thrush", level: 0.9, unit: "feet" };
export const curve = [0, 20, 40, 60].map((exposure, place) => ({
  exposure,
  estimate: 0.1 + 0.05 * place,
  lower: 0.06 + 0.04 * place,
  upper: 0.15 + 0.07 * place,
}));
export const raw = [
  { exposure: 8, share: 0.12, n: 310 },
  { exposure: 44, share: 0.26, n: 305 },
];
export const curveOptions = {
  title: "Prevalence rises",
  exposureTitle: "Rain of 14 days (mm)",
  level: 0.95,
  caseDefinition: "grade 1 or more",
};
export const profile = [0, 1, 2, 3].map((place) => ({
  place,
  estimate: 1 + 0.05 * place,
  lower: 0.9,
  upper: 1.3,
  lowerTogether: 0.8,
  upperTogether: 1.45,
}));
export const profileOptions = {
  title: "Days that count",
  placeTitle: "Days before the visit",
  ratioTitle: "Odds ratio per 10 mm",
  level: 0.95,
};
export const yardMonths = ["Top", "Brook"].flatMap((yardId) =>
  ["2025-01", "2025-02", "2025-04"].map((month, place) => ({
    yardId,
    month,
    share: place === 1 ? null : 0.2 * place,
    n: place === 1 ? 0 : 30,
    rainMm: place === 2 ? null : 60 + place,
  })),
);
export const monthsOptions = { title: "Rain and thrush", caseDefinition: "grade 1 or more" };
export const drift = [
  { quarter: "2024-Q1", estimate: 0.71, lower: 0.6, upper: 0.82, n: 40 },
  { quarter: "2024-Q2", estimate: null, lower: null, upper: null, n: 3 },
];
export const flow = [
  { step: "Rows read", left: 4609, lost: 0, why: "" },
  { step: "Graded", left: 4100, lost: 509, why: "not looked at" },
];
const flowOptions = { title: "Record flow", unit: "feet at visits" };

/** The charts of the climate study, each with nothing too. */
export const climateCharts: readonly (readonly [string, Chart])[] = [
  ["forest", forestChart(forestRows, forestOptions)],
  ["forest, none estimated", forestChart(forestRows.slice(3), forestOptions)],
  ["prevalence curve", prevalenceCurveChart(curve, raw, curveOptions)],
  ["prevalence curve, nothing", prevalenceCurveChart([], [], curveOptions)],
  ["ratio profile", ratioProfileChart(profile, profileOptions)],
  ["ratio profile, nothing", ratioProfileChart([], profileOptions)],
  ["yard months", yardMonthsChart(yardMonths, monthsOptions)],
  ["yard months, nothing", yardMonthsChart([], monthsOptions)],
  ["observer drift", observerDriftChart(drift, { title: "Agreement", level: 0.95 })],
  ["observer drift, too few", observerDriftChart(drift.slice(1), { title: "Agreement", level: 0.95 })],
  ["record flow", recordFlowChart(flow, flowOptions)],
  ["record flow, nothing", recordFlowChart([], flowOptions)],
];
