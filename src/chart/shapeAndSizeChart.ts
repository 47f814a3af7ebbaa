import type { Chart } from "./Chart.js";
import { cellText } from "./cellText.js";
import { chartOf } from "./parts/chartOf.js";
import { emptyChart } from "./parts/emptyChart.js";
import { palette } from "./parts/palette.js";
import type { Table } from "./Table.js";

/** One foot: its size and one measure of its shape. */
export interface ShapeAndSizeRow {
  readonly horseId: string;
  /** `near fore`. */
  readonly foot: string;
  readonly end: "front" | "hind";
  readonly size: number;
  readonly value: number;
}

/** Places the line of one end runs through, by size. */
export interface ShapeAndSizeLine {
  readonly end: "front" | "hind";
  readonly places: readonly { readonly size: number; readonly value: number }[];
}

export interface ShapeAndSizeOptions {
  readonly title: string;
  /** What stands on the axes: `Width / length`, `Size of the foot, mm`. */
  readonly measure: string;
  readonly size: string;
  readonly digits: number;
  /** How it was taken: `after trimming, mean over visits`. */
  readonly taken: string;
  /** What the lines say, in a sentence. */
  readonly finding: string;
}

const looks = {
  front: { shape: "circle", color: palette.blue, dash: [1, 0] },
  hind: { shape: "triangle-up", color: palette.vermillion, dash: [7, 4] },
} as const;
const ends = ["front", "hind"] as const;

/** One mark a foot: size across, a measure of shape up, with the line of each end. How far the lines lie apart is the difference at one size. */
export function shapeAndSizeChart(
  rows: readonly ShapeAndSizeRow[],
  lines: readonly ShapeAndSizeLine[],
  options: ShapeAndSizeOptions,
): Chart {
  const { title, measure, size, digits, taken, finding } = options;
  const table = tableOf(rows, options);
  if (rows.length === 0) return emptyChart({ title, why: "No foot has this measure and its size.", table });
  const shown = ends.filter((end) => rows.some((row) => row.end === end));
  const scaled = (values: readonly unknown[]) => ({ domain: shown, range: values });
  const format = `.${digits}f`;
  const axis = (field: string, text: string, of: string) => ({
    field,
    ...{ type: "quantitative", title: text, scale: { zero: false, nice: true, padding: 10 } },
    axis: { format: of, tickCount: 6, grid: true },
  });
  const x = axis("size", size, ".0f");
  const y = axis("value", measure, format);
  const color = { field: "end", type: "nominal", title: "Foot", scale: scaled(shown.map((end) => looks[end].color)) };
  return chartOf({
    title,
    explained: [
      `One mark a foot (${taken}).`,
      lines.length === 0 ? "" : "Full line front, dashed hind: they lie the difference at one size apart.",
    ].filter((line) => line !== ""),
    reading: readingOf(rows, shown, { measure, digits, finding }),
    table,
    widthPx: 540,
    body: {
      ...{ width: 430, height: 320 },
      layer: [
        {
          data: { values: rows.map((row) => ({ ...row })) },
          mark: { type: "point", filled: true, opacity: 0.45, size: 42 },
          encoding: {
            ...{ x, y, color },
            shape: { field: "end", type: "nominal", title: "Foot", scale: scaled(shown.map((end) => looks[end].shape)) },
            tooltip: [
              { field: "horseId", type: "nominal", title: "Horse" },
              { field: "foot", type: "nominal", title: "Foot" },
              { field: "size", type: "quantitative", title: size, format: ".0f" },
              { field: "value", type: "quantitative", title: measure, format },
            ],
          },
        },
        ...lines.map(({ end, places }) => ({
          data: { values: places.map((place) => ({ ...place, end })) },
          mark: { type: "line", strokeWidth: 3, strokeDash: looks[end].dash },
          encoding: { x, y, color },
        })),
      ],
    },
  });
}

function readingOf(
  rows: readonly ShapeAndSizeRow[],
  shown: readonly ShapeAndSizeRow["end"][],
  { measure, digits, finding }: Pick<ShapeAndSizeOptions, "measure" | "digits" | "finding">,
): string {
  const said = shown.map((end) => {
    const own = rows.filter((row) => row.end === end);
    const range = (of: (row: ShapeAndSizeRow) => number, places: number) =>
      `${cellText(Math.min(...own.map(of)), { digits: places })} to ${cellText(Math.max(...own.map(of)), { digits: places })}`;
    const feet = `${own.length} ${end} ${own.length === 1 ? "foot" : "feet"}`;
    return `${feet}: size ${range(({ size }) => size, 0)}, ${measure} ${range(({ value }) => value, digits)}`;
  });
  return `${said.join("; ")}. ${finding}`;
}

function tableOf(rows: readonly ShapeAndSizeRow[], { measure, size, digits, taken }: ShapeAndSizeOptions): Table {
  return {
    caption: `${measure} and size (${taken})`,
    columns: [
      { name: "horseId", title: "Horse" },
      { name: "foot", title: "Foot" },
      { name: "size", title: size, digits: 0 },
      { name: "value", title: measure, digits },
    ],
    rows: rows.map(({ horseId, foot, size: of, value }) => ({ horseId, foot, size: of, value })),
  };
}
