import type { Chart } from "./Chart.js";
import { chartOf } from "./parts/chartOf.js";
import { emptyChart } from "./parts/emptyChart.js";
import { greyedRows } from "./parts/greyedRows.js";
import { palette } from "./parts/palette.js";
import type { Table } from "./Table.js";

/** Intervals between routine visits of one yard, counted. */
export interface IntervalKeepingRow {
  readonly yardId: string;
  readonly early: number;
  readonly kept: number;
  readonly late: number;
  /** Too few intervals to be judged: greyed. */
  readonly tooFew?: boolean;
}

export interface IntervalKeepingOptions {
  /** The finding; without it, the yard with the greatest share of late intervals is named. */
  readonly title?: string;
  /** Days early or late within which an interval counts as kept. */
  readonly toleranceDays: number;
  /** Why rows with `tooFew` are grey: `fewer than 5 horses`. */
  readonly tooFewReason?: string;
}

// Light to dark from left to right, so that the three stay apart in grey print.
const states = [
  { name: "kept", full: palette.skyBlue, grey: "#c3c9c6" },
  { name: "early", full: palette.yellow, grey: "#e8ebea" },
  { name: "late", full: palette.vermillion, grey: "#9aa19e" },
] as const;
const greyOf = (state: string) => `${state}, too few`;

const widthPx = 420;
const narrowestLabelled = 0.06;

/**
 * Share of intervals kept, early and late, one bar a yard in the order of the rows, counts written in and the number of intervals
 * beside it. Kept starts at the left edge and late ends at the right one, so that both can be compared between yards.
 */
export function intervalKeepingChart(rows: readonly IntervalKeepingRow[], options: IntervalKeepingOptions): Chart {
  const reason = options.tooFewReason ?? "too few to judge";
  const table = tableOf(rows, options, reason);
  const drawn = rows.filter((row) => row.kept + row.early + row.late > 0);
  const title = options.title ?? titleOf(drawn);
  if (drawn.length === 0)
    return emptyChart({ title, why: "No interval between two routine visits can be set against a plan.", table });
  const grey = drawn.some((row) => row.tooFew === true) ? [`Grey: ${reason}.`] : [];
  return chartOf({
    title,
    explained: [`Kept: within ${within(options)} of the agreed date. Figures: numbers of intervals.`, ...grey],
    reading: readingOf(drawn),
    table,
    widthPx: widthPx + 150,
    body: {
      width: widthPx,
      height: { step: 30 },
      data: { values: drawn.flatMap(segmentsOf) },
      layer: layersOf(drawn),
    },
  });
}

function titleOf(rows: readonly IntervalKeepingRow[]): string {
  const judged = rows.filter((row) => row.tooFew !== true);
  const share = (row: IntervalKeepingRow) => row.late / (row.kept + row.early + row.late);
  const latest = judged.reduce<IntervalKeepingRow | null>(
    (most, row) => (row.late > 0 && (most === null || share(row) > share(most)) ? row : most),
    null,
  );
  if (latest === null || judged.length < 2) return "Intervals kept, early and late, by yard";
  return `Late most often: ${latest.yardId}, ${latest.late} of ${latest.kept + latest.early + latest.late} intervals`;
}

function segmentsOf(row: IntervalKeepingRow): Record<string, unknown>[] {
  const total = row.kept + row.early + row.late;
  return states.map(({ name }, order) => ({
    yardId: row.yardId,
    state: name,
    shade: row.tooFew === true ? greyOf(name) : name,
    order,
    count: row[name],
    total,
    label: row[name] / total >= narrowestLabelled ? String(row[name]) : "",
  }));
}

function layersOf(rows: readonly IntervalKeepingRow[]): Record<string, unknown>[] {
  const y = {
    field: "yardId",
    type: "nominal",
    title: "Yard",
    // Not `sort`: that makes an expression of the names, in which one called `constructor` or `if` is not read as a name.
    scale: { domain: rows.map((row) => row.yardId) },
    axis: {
      domain: false,
      ticks: false,
      labelPadding: 8,
      titleAngle: 0,
      titleAlign: "right",
      titleBaseline: "bottom",
      titleX: -8,
      titleY: -6,
    },
  };
  const x = {
    field: "count",
    type: "quantitative",
    stack: "normalize",
    title: "Share of intervals",
    axis: { format: ".0%", tickCount: 5, grid: false },
  };
  const order = { field: "order", type: "quantitative" };
  return [
    {
      mark: { type: "bar", stroke: palette.quietInk, strokeWidth: 0.8, height: { band: 0.78 } },
      encoding: {
        y,
        x,
        order,
        color: {
          field: "shade",
          type: "nominal",
          scale: {
            domain: [...states.map(({ name }) => name), ...states.map(({ name }) => greyOf(name))],
            range: [...states.map(({ full }) => full), ...states.map(({ grey }) => grey)],
          },
          legend: {
            title: null,
            values: states.map(({ name }) => name),
            orient: "top",
            direction: "horizontal",
            symbolType: "square",
            symbolSize: 160,
            symbolStrokeColor: palette.quietInk,
            symbolStrokeWidth: 0.8,
          },
        },
        tooltip: [
          { field: "yardId", type: "nominal", title: "Yard" },
          { field: "state", type: "nominal", title: "Intervals" },
          { field: "count", type: "quantitative", title: "Number" },
          { field: "total", type: "quantitative", title: "of" },
        ],
      },
    },
    {
      mark: { type: "text", fontSize: 12, color: palette.black },
      encoding: {
        y,
        x: { ...x, bandPosition: 0.5 },
        order,
        detail: { field: "state", type: "nominal" },
        text: { field: "label", type: "nominal" },
      },
    },
    {
      transform: [{ filter: "datum.order === 0" }],
      mark: { type: "text", align: "left", color: palette.quietInk },
      encoding: { y, x: { value: widthPx + 8 }, text: { field: "total", type: "quantitative", format: ",d" } },
    },
    {
      data: { values: [{}] },
      mark: { type: "text", text: "n", align: "left", baseline: "bottom", fontStyle: "italic", color: palette.quietInk },
      encoding: { x: { value: widthPx + 8 }, y: { value: -6 } },
    },
  ];
}

function readingOf(rows: readonly IntervalKeepingRow[]): string {
  const said = rows.map(({ yardId, kept, early, late }) => `${yardId} ${kept} kept, ${early} early, ${late} late`);
  const most = 8;
  const more = said.length > most ? `; and ${said.length - most} more yards in the table` : "";
  return `Intervals by yard: ${said.slice(0, most).join("; ")}${more}.`;
}

function tableOf(rows: readonly IntervalKeepingRow[], options: IntervalKeepingOptions, reason: string): Table {
  return {
    caption: `Intervals between routine visits, kept within ${within(options)} of the agreed date, by yard`,
    columns: [
      { name: "yardId", title: "Yard" },
      { name: "kept", title: "Kept" },
      { name: "early", title: "Early" },
      { name: "late", title: "Late" },
      { name: "n", title: "Intervals" },
    ],
    rows: rows.map(({ yardId, kept, early, late }) => ({ yardId, kept, early, late, n: kept + early + late })),
    greyed: greyedRows(rows, reason),
  };
}

function within({ toleranceDays }: IntervalKeepingOptions): string {
  return `${toleranceDays} ${toleranceDays === 1 ? "day" : "days"}`;
}
