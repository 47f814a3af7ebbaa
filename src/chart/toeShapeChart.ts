import type { Chart } from "./Chart.js";
import { chartOf } from "./parts/chartOf.js";
import { emptyChart } from "./parts/emptyChart.js";
import { palette } from "./parts/palette.js";
import type { Table } from "./Table.js";

/** One foot, by two measures of its shape. */
export interface ToeShapeRow {
  /** `Bess, near fore`. */
  readonly name: string;
  readonly kind: "front" | "hind" | "specimen";
  readonly shapeIndex: number;
  readonly toeTaper: number;
  /** Chance of a front foot by the shape; null where it is not known. */
  readonly probabilityFore: number | null;
}

export interface ToeShapeOptions {
  readonly title?: string;
  /** `traced before trimming, mean over tracings`. */
  readonly taken: string;
}

const looks = {
  front: { shape: "circle", color: palette.blue, words: "front" },
  hind: { shape: "triangle-up", color: palette.vermillion, words: "hind" },
  specimen: { shape: "diamond", color: palette.black, words: "specimen" },
} as const;

/** One mark a foot: width over length across, width of the toe up, so that round and pointed feet part. Specimens are large diamonds. */
export function toeShapeChart(rows: readonly ToeShapeRow[], options: ToeShapeOptions): Chart {
  const title = options.title ?? "Front and hind feet by the shape of the toe";
  const table = tableOf(rows);
  if (rows.length === 0) return emptyChart({ title, why: "No outline can be used.", table });
  const kinds = (["front", "hind", "specimen"] as const).filter((kind) => rows.some((row) => row.kind === kind));
  const axis = { format: ".2f", tickCount: 6, grid: true };
  const place = (field: string, text: string) => ({
    field,
    ...{ type: "quantitative", title: text, scale: { zero: false, nice: true, padding: 12 }, axis },
  });
  const scaled = (values: readonly unknown[]) => ({ domain: kinds.map((kind) => looks[kind].words), range: values });
  const values = rows.map(({ kind, ...row }) => ({ ...row, kind: looks[kind].words }));
  return chartOf({
    title,
    explained: [`One mark a foot (${options.taken}).`, "Further up: a broader toe. Further right: wider for its length."],
    reading: readingOf(rows, kinds),
    table,
    widthPx: 540,
    body: {
      width: 430,
      height: 340,
      data: { values },
      mark: { type: "point", filled: true, opacity: 0.75 },
      encoding: {
        x: place("shapeIndex", "Width / length"),
        y: place("toeTaper", "Width near the toe / greatest width"),
        shape: { field: "kind", type: "nominal", title: "Foot", scale: scaled(kinds.map((kind) => looks[kind].shape)) },
        color: { field: "kind", type: "nominal", title: "Foot", scale: scaled(kinds.map((kind) => looks[kind].color)) },
        size: { condition: { test: "datum.kind === 'specimen'", value: 240 }, value: 60 },
        tooltip: [
          { field: "name", type: "nominal", title: "Foot" },
          { field: "shapeIndex", type: "quantitative", title: "Width / length", format: ".2f" },
          { field: "toeTaper", type: "quantitative", title: "Toe / greatest width", format: ".2f" },
          { field: "probabilityFore", type: "quantitative", title: "Chance of a front foot", format: ".0%" },
        ],
      },
    },
  });
}

function readingOf(rows: readonly ToeShapeRow[], kinds: readonly ToeShapeRow["kind"][]): string {
  return kinds
    .map((kind) => {
      const own = rows.filter((row) => row.kind === kind);
      const range = (of: (row: ToeShapeRow) => number) =>
        `${Math.min(...own.map(of)).toFixed(2)} to ${Math.max(...own.map(of)).toFixed(2)}`;
      const words =
        kind === "specimen" ? (own.length === 1 ? "specimen" : "specimens") : `${kind} ${own.length === 1 ? "foot" : "feet"}`;
      return `${own.length} ${words}: width over length ${range((row) => row.shapeIndex)}, toe over greatest width ${range((row) => row.toeTaper)}.`;
    })
    .join(" ");
}

function tableOf(rows: readonly ToeShapeRow[]): Table {
  return {
    caption: "Shape of single feet",
    columns: [
      { name: "name", title: "Foot" },
      { name: "kind", title: "Labelled" },
      { name: "shapeIndex", title: "Width / length", digits: 2 },
      { name: "toeTaper", title: "Toe / greatest width", digits: 2 },
      { name: "probabilityFore", title: "Chance of a front foot", percent: true },
    ],
    rows: rows.map((row) => ({ ...row })),
  };
}
