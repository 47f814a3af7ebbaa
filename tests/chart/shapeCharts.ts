import type { Chart } from "../../src/chart/Chart.js";
import { fourFeetChart, type FourFeetRow } from "../../src/chart/fourFeetChart.js";
import { growthTimelineChart, type GrowthTimelineRow } from "../../src/chart/growthTimelineChart.js";
import { meanOutlinesChart, type MeanOutlineRow } from "../../src/chart/meanOutlinesChart.js";
import { type PairOverTimeRow, pairsOverTimeChart } from "../../src/chart/pairsOverTimeChart.js";
import { shapeAndSizeChart, type ShapeAndSizeLine, type ShapeAndSizeRow } from "../../src/chart/shapeAndSizeChart.js";
import { shapeByFootChart, type ShapeByFootRow, type UsualBand } from "../../src/chart/shapeByFootChart.js";
import { toeShapeChart, type ToeShapeRow } from "../../src/chart/toeShapeChart.js";

const oval = (wide: number, high: number) =>
  Array.from({ length: 60 }, (_, k) => {
    const angle = Math.PI / 2 + (2 * Math.PI * k) / 60;
    return { x: wide * Math.cos(angle), y: 0.5 + high * Math.sin(angle) };
  });

/** Round fronts and narrow hinds, made of ovals. */
export const means: readonly MeanOutlineRow[] = [
  { end: "fore", horses: 12, outlines: 40, mean: oval(0.5, 0.5), inner: oval(0.48, 0.48), outer: oval(0.52, 0.52) },
  { end: "hind", horses: 1, outlines: 1, mean: oval(0.45, 0.53), inner: oval(0.45, 0.53), outer: oval(0.45, 0.53) },
];
export const outlinesTaken = { taken: "Before trimming; band: two standard deviations between horses" };

export const toes: readonly ToeShapeRow[] = [
  { name: "Bess, near fore", kind: "front", shapeIndex: 1.02, toeTaper: 0.88, probabilityFore: 0.99 },
  { name: "Bess, near hind", kind: "hind", shapeIndex: 0.94, toeTaper: 0.77, probabilityFore: 0.02 },
  { name: "Captain, off hind", kind: "hind", shapeIndex: 0.96, toeTaper: 0.8, probabilityFore: null },
  { name: "specimen 1, fore, side unknown", kind: "specimen", shapeIndex: 1, toeTaper: 0.83, probabilityFore: 0.6 },
];
export const toesTaken = { taken: "one for each tracing" };

export const byFoot: readonly ShapeByFootRow[] = [
  { horseId: "Bess", foot: "LF", value: 1.02 },
  { horseId: "Captain", foot: "LF", value: 1.02 },
  { horseId: "Dot", foot: "LF", value: 0.98 },
  { horseId: "Bess", foot: "RF", value: 1.01 },
  { horseId: "Bess", foot: "LH", value: 0.93 },
  { horseId: "Bess", foot: "RH", value: 0.9 },
];
export const byFootBands: readonly UsualBand[] = [
  { end: "fore", lower: 0.96, median: 1.01, upper: 1.08 },
  { end: "hind", lower: 0.88, median: 0.95, upper: 1 },
];
export const byFootOptions = {
  title: "Width over length of every foot",
  measure: "Width / length",
  digits: 2,
  taken: "after trimming, measured last; band: 2.5 to 97.5 percentile of this herd",
};

export const timeline: readonly GrowthTimelineRow[] = [
  {
    foot: "near fore",
    kind: "ring",
    sightings: [
      { visitDate: "2025-02-17", belowCoronetMm: 10 },
      { visitDate: "2025-04-07", belowCoronetMm: 22 },
    ],
    ...{ beganEarliest: "2024-12-19", beganLatest: "2025-01-26", toeLengthMm: 82 },
    ...{ groundEarliest: "2025-10-15", groundLatest: "2026-01-28" },
  },
  {
    foot: "off hind",
    kind: "abscess track",
    sightings: [{ visitDate: "2025-03-03", belowCoronetMm: 8 }],
    ...{ beganEarliest: "2025-01-23", beganLatest: "2025-02-05", toeLengthMm: null, groundEarliest: null, groundLatest: null },
  },
];
export const timelineOptions = {
  horseId: "Bess",
  feet: ["near fore", "off fore", "near hind", "off hind"],
  rate: "0.20 to 0.31 mm a day, published range",
};

export const pairs: readonly PairOverTimeRow[] = [
  {
    name: "Bess",
    readings: [
      { visitDate: "2025-01-06", differenceDeg: 1 },
      { visitDate: "2025-03-03", differenceDeg: 4 },
      { visitDate: "2025-05-05", differenceDeg: 7 },
    ],
  },
  { name: "Captain", readings: [{ visitDate: "2025-02-03", differenceDeg: -2 }] },
];
export const pairsOptions = { title: "Front pairs over time", unevenPairDeg: 5, taken: "after trimming" };

const usual = { lower: 0.9, median: 1, upper: 1.1 };
export const fourFeet: readonly FourFeetRow[] = [
  { foot: "near fore", measure: "Shape index", value: 1.02, text: "1.02", ...usual },
  { foot: "off fore", measure: "Shape index", value: 1.3, text: "1.30", ...usual },
  { foot: "near hind", measure: "Shape index", value: 0.9, text: "0.90", ...usual },
  { foot: "near hind", measure: "Toe-heel gap", value: -1, text: "−1.0°", lower: 1, median: 3, upper: 6 },
];
export const fourFeetOptions = {
  title: "Four feet of Bess on 6 January 2026",
  taken: "after trimming; band: 2.5 to 97.5 percentile of the other horses",
  measures: ["Shape index", "Toe-heel gap"],
};

export const sizedFeet: readonly ShapeAndSizeRow[] = [
  { horseId: "Bess", foot: "near fore", end: "front", size: 121, value: 1.02 },
  { horseId: "Bess", foot: "near hind", end: "hind", size: 118, value: 0.95 },
  { horseId: "Dot", foot: "off hind", end: "hind", size: 112, value: 0.93 },
];
export const sizeLines: readonly ShapeAndSizeLine[] = [
  {
    end: "front",
    places: [
      { size: 110, value: 1 },
      { size: 121, value: 1.02 },
    ],
  },
  {
    end: "hind",
    places: [
      { size: 112, value: 0.94 },
      { size: 118, value: 0.95 },
    ],
  },
];
export const sizeOptions = {
  ...{ title: "Width over length of front and hind feet, by size", measure: "Width / length", digits: 2 },
  ...{ size: "Size, mm", taken: "after trimming, mean over visits", finding: "At one size front less hind is +0.061." },
};

/** Every chart of shape and growth, and each with one row and with none. */
export const shapeCharts: readonly (readonly [string, Chart])[] = [
  ["mean outlines", meanOutlinesChart(means, outlinesTaken)],
  ["mean outlines, one end", meanOutlinesChart(means.slice(0, 1), outlinesTaken)],
  ["mean outlines, none", meanOutlinesChart([], outlinesTaken)],
  ["toe shape", toeShapeChart(toes, toesTaken)],
  ["toe shape, one foot", toeShapeChart(toes.slice(0, 1), toesTaken)],
  ["toe shape, no foot", toeShapeChart([], toesTaken)],
  ["shape and size", shapeAndSizeChart(sizedFeet, sizeLines, sizeOptions)],
  ["shape and size, one foot and no line", shapeAndSizeChart(sizedFeet.slice(0, 1), [], sizeOptions)],
  ["shape and size, no foot", shapeAndSizeChart([], [], sizeOptions)],
  ["four feet", fourFeetChart(fourFeet, fourFeetOptions)],
  ["four feet, one measure", fourFeetChart(fourFeet.slice(0, 1), fourFeetOptions)],
  ["four feet, none", fourFeetChart([], fourFeetOptions)],
  ["growth timeline", growthTimelineChart(timeline, timelineOptions)],
  ["growth timeline, one mark", growthTimelineChart(timeline.slice(1), timelineOptions)],
  ["growth timeline, no mark", growthTimelineChart([], timelineOptions)],
  ["pairs over time", pairsOverTimeChart(pairs, pairsOptions)],
  ["pairs over time, one pair", pairsOverTimeChart(pairs.slice(1), pairsOptions)],
  ["pairs over time, no pair", pairsOverTimeChart([], pairsOptions)],
  ["shape by foot", shapeByFootChart(byFoot, byFootBands, byFootOptions)],
  ["shape by foot, one foot", shapeByFootChart(byFoot.slice(0, 1), [], byFootOptions)],
  ["shape by foot, no foot", shapeByFootChart([], [], byFootOptions)],
];
