import type { Chart } from "./Chart.js";
import { cellText } from "./cellText.js";
import { chartOf } from "./parts/chartOf.js";
import { emptyChart } from "./parts/emptyChart.js";
import { palette } from "./parts/palette.js";
import type { Table } from "./Table.js";

const feet = [
  { foot: "LF", words: "near fore" },
  { foot: "RF", words: "off fore" },
  { foot: "LH", words: "near hind" },
  { foot: "RH", words: "off hind" },
] as const;

/** One foot of one horse. */
export interface ShapeByFootRow {
  readonly horseId: string;
  readonly foot: (typeof feet)[number]["foot"];
  readonly value: number;
}

/** Where most feet of one end of this herd lie. */
export interface UsualBand {
  readonly end: "fore" | "hind";
  readonly lower: number;
  readonly median: number;
  readonly upper: number;
}

export interface ShapeByFootOptions {
  readonly title: string;
  /** What stands on the axis: `Width / length`. */
  readonly measure: string;
  readonly digits: number;
  /** How it was taken, and what the band is: `before trimming, last visit; band: 2.5 to 97.5 percentile of this herd`. */
  readonly taken: string;
}

const placePx = 110;

/** One mark a foot, in four columns, over the band in which most feet of that end of the herd lie; the line in the band is the median. */
export function shapeByFootChart(
  rows: readonly ShapeByFootRow[],
  bands: readonly UsualBand[],
  options: ShapeByFootOptions,
): Chart {
  const { title, measure, digits, taken } = options;
  const table = tableOf(rows, options);
  if (rows.length === 0) return emptyChart({ title, why: "No foot has this measure.", table });
  const width = feet.length * placePx;
  const x = {
    field: "place",
    type: "quantitative",
    scale: { domain: [-0.5, 3.5], nice: false },
    axis: {
      values: [0, 1, 2, 3],
      labelExpr: `[${feet.map(({ words }) => `'${words}'`).join(", ")}][datum.value]`,
      ...{ title: "Foot", grid: false, ticks: false },
    },
  };
  const format = `.${digits}f`;
  const y = {
    type: "quantitative",
    title: measure,
    scale: { zero: false, nice: true, padding: 8 },
    axis: { format, grid: true },
  };
  const bandValues = bands.map(({ end, ...band }) => ({
    ...band,
    ...(end === "fore" ? { from: -0.45, to: 1.45 } : { from: 1.55, to: 3.45 }),
  }));
  const tooltip = [
    { field: "horseId", type: "nominal", title: "Horse" },
    { field: "words", type: "nominal", title: "Foot" },
    { field: "value", type: "quantitative", title: measure, format },
  ];
  const bandLayers = [
    {
      data: { values: bandValues },
      mark: { type: "rect", color: palette.skyBlue, opacity: 0.25 },
      encoding: { x: { ...x, field: "from" }, x2: { field: "to" }, y: { ...y, field: "lower" }, y2: { field: "upper" } },
    },
    {
      data: { values: bandValues },
      mark: { type: "rule", color: palette.blue, strokeWidth: 1.5 },
      encoding: { x: { ...x, field: "from" }, x2: { field: "to" }, y: { ...y, field: "median" } },
    },
  ];
  return chartOf({
    title,
    explained: [`One mark a foot (${taken}). ${bands.length === 0 ? "" : "Line in the band: median."}`],
    reading: readingOf(rows, bands, options),
    table,
    widthPx: width + 60,
    body: {
      ...{ width, height: 300 },
      layer: [
        ...(bands.length === 0 ? [] : bandLayers),
        {
          data: { values: placed(rows) },
          mark: { type: "point", filled: true, size: 34, color: palette.ink, opacity: 0.55 },
          encoding: { x, y: { ...y, field: "value" }, tooltip },
        },
      ],
    },
  });
}

/** Marks of one column are set beside each other by turns, so that equal values can be told. */
function placed(rows: readonly ShapeByFootRow[]): object[] {
  return feet.flatMap(({ foot, words }, column) => {
    const own = rows.filter((row) => row.foot === foot).sort((a, b) => a.value - b.value || (a.horseId < b.horseId ? -1 : 1));
    return own.map(({ horseId, value }, turn) => ({ horseId, words, value, place: column + spread(turn) }));
  });
}

/** Places between -0.3 and 0.3 in an order in which neighbours lie far apart. */
function spread(turn: number): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  return Math.round((((turn * golden) % 1) - 0.5) * 600) / 1000;
}

function readingOf(
  rows: readonly ShapeByFootRow[],
  bands: readonly UsualBand[],
  { measure, digits }: ShapeByFootOptions,
): string {
  const number = (value: number) => cellText(value, { digits });
  const ends = bands.map(
    ({ end, lower, median, upper }) =>
      `${end === "fore" ? "front" : "hind"} feet from ${number(lower)} to ${number(upper)}, median ${number(median)}`,
  );
  const counted = `${rows.length} ${rows.length === 1 ? "foot" : "feet"}.`;
  return ends.length === 0 ? `${measure} of ${counted}` : `${measure}: ${ends.join("; ")}; ${counted}`;
}

function tableOf(rows: readonly ShapeByFootRow[], { measure, digits, taken }: ShapeByFootOptions): Table {
  return {
    caption: `${measure} (${taken})`,
    columns: [
      { name: "horseId", title: "Horse" },
      { name: "foot", title: "Foot" },
      { name: "value", title: measure, digits },
    ],
    rows: rows.map(({ horseId, foot, value }) => ({
      horseId,
      foot: feet.find((each) => each.foot === foot)?.words ?? foot,
      value,
    })),
  };
}
