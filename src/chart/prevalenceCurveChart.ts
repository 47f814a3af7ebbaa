import type { Chart } from "./Chart.js";
import { cellText } from "./cellText.js";
import { chartOf } from "./parts/chartOf.js";
import { emptyChart } from "./parts/emptyChart.js";
import { palette } from "./parts/palette.js";
import type { Table } from "./Table.js";
import { levelText } from "./parts/levelText.js";

/** The curve at one exposure. */
export interface CurveRow {
  readonly exposure: number;
  readonly estimate: number;
  readonly lower: number;
  readonly upper: number;
}

/** Raw share among the feet of one stretch of the exposure, at its mean. */
export interface RawShare {
  readonly exposure: number;
  readonly share: number;
  readonly n: number;
}

export interface PrevalenceCurveOptions {
  readonly title: string;
  /** With the unit: `Rain in the 14 days before the visit (mm)`. */
  readonly exposureTitle: string;
  readonly level: number;
  readonly caseDefinition: string;
}

const widthPx = 460;

/** Prevalence over an exposure as a line with its band, the raw shares beside it as circles whose number of feet is written on them. */
export function prevalenceCurveChart(
  curve: readonly CurveRow[],
  raw: readonly RawShare[],
  options: PrevalenceCurveOptions,
): Chart {
  const { title, exposureTitle, level, caseDefinition } = options;
  const interval = `${levelText(level)} interval`;
  const table: Table = {
    caption: `Prevalence (${caseDefinition}) over ${exposureTitle.slice(0, 1).toLowerCase()}${exposureTitle.slice(1)}`,
    columns: [
      { name: "exposure", title: exposureTitle, digits: 0 },
      { name: "what", title: "What" },
      { name: "estimate", title: "Prevalence (on the curve with all else as it was)", percent: true, digits: 1 },
      { name: "lower", title: `${interval}, from`, percent: true, digits: 1 },
      { name: "upper", title: "to", percent: true, digits: 1 },
      { name: "n", title: "Feet of the raw share" },
    ],
    rows: [
      ...curve.map(({ exposure, estimate, lower, upper }) => ({ exposure, what: "curve", estimate, lower, upper, n: null })),
      ...raw.map(({ exposure, share, n }) => ({ exposure, what: "raw share", estimate: share, lower: null, upper: null, n })),
    ],
  };
  const [first, last] = [curve[0], curve.at(-1)];
  if (first === undefined || last === undefined) return emptyChart({ title, why: "The curve could not be estimated.", table });
  const x = { field: "exposure", type: "quantitative", title: exposureTitle, axis: { grid: false, tickCount: 8 } };
  const y = { type: "quantitative", title: "Share of feet with thrush", axis: { format: ".0%" }, scale: { zero: true } };
  const text = { field: "n", type: "quantitative", format: ",d" };
  const percent = (value: number) => cellText(value, { percent: true });
  return chartOf({
    title,
    explained: [
      `Line: share of feet (${caseDefinition}) with all else as it was, and its ${interval} for each point.`,
      "Circles: raw shares of tenths of the feet, nothing held equal; figures: feet.",
    ],
    reading: `From ${percent(first.estimate)} (${percent(first.lower)} to ${percent(first.upper)}) at ${first.exposure.toFixed(0)} to ${percent(last.estimate)} (${percent(last.lower)} to ${percent(last.upper)}) at ${last.exposure.toFixed(0)}.`,
    table,
    widthPx: widthPx + 60,
    body: {
      width: widthPx,
      height: 260,
      layer: [
        {
          data: { values: curve.map((row) => ({ ...row })) },
          mark: { type: "area", color: palette.skyBlue, opacity: 0.35 },
          encoding: { x, y: { ...y, field: "lower" }, y2: { field: "upper" } },
        },
        {
          data: { values: curve.map((row) => ({ ...row })) },
          mark: { type: "line", color: palette.blue, strokeWidth: 2.5 },
          encoding: { x, y: { ...y, field: "estimate" } },
        },
        {
          data: { values: raw.map((row) => ({ ...row })) },
          mark: {
            type: "point",
            shape: "circle",
            size: 55,
            stroke: palette.ink,
            fill: palette.paper,
            strokeWidth: 1.5,
            opacity: 1,
          },
          encoding: {
            x,
            y: { ...y, field: "share" },
            tooltip: [
              { field: "exposure", type: "quantitative", title: exposureTitle, format: ".1f" },
              { field: "share", type: "quantitative", title: "Raw share", format: ".1%" },
              { field: "n", type: "quantitative", title: "Feet" },
            ],
          },
        },
        {
          data: { values: raw.map((row) => ({ ...row })) },
          mark: {
            type: "text",
            dy: -12,
            fontSize: 11,
            color: palette.ink,
            stroke: palette.paper,
            strokeWidth: 3,
            strokeJoin: "round",
          },
          encoding: { x, y: { ...y, field: "share" }, text },
        },
        {
          data: { values: raw.map((row) => ({ ...row })) },
          mark: { type: "text", dy: -12, fontSize: 11, color: palette.ink },
          encoding: { x, y: { ...y, field: "share" }, text },
        },
      ],
    },
  });
}
