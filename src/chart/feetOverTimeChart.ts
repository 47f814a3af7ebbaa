import type { Chart } from "./Chart.js";
import { chartOf } from "./parts/chartOf.js";
import { emptyChart } from "./parts/emptyChart.js";
import { palette } from "./parts/palette.js";
import type { Table } from "./Table.js";

/** One foot at one visit of one horse. */
export interface FeetOverTimeRow {
  /** The visit as it is written under its column, the same for all feet of it: `6 Jan 2026`. */
  readonly visit: string;
  /** `near fore`. */
  readonly foot: string;
  readonly grade: number | null;
  /** Recorded as not looked at. */
  readonly notSeen: boolean;
  /** A finding of that day is the vet's. */
  readonly vet: boolean;
}

export interface FeetOverTimeOptions {
  /** Feet from top to bottom. */
  readonly feet: readonly string[];
}

// Dark enough under black figures (4.5 to 1 and more), and apart in grey print.
const shades = ["#eef1f0", palette.yellow, palette.orange, palette.vermillion] as const;
const columnPx = 56;
const rowPx = 22;
const narrowestPx = 560;
const yearBelow = "[slice(datum.label, 0, -5), slice(datum.label, -4)]";

/**
 * Thrush grades of the feet of one horse: a column for each visit in the order of the rows, a row for each foot. The grade is written in; a
 * heavy edge marks a finding that is the vet's. Columns are visits, not equal times.
 */
export function feetOverTimeChart(rows: readonly FeetOverTimeRow[], options: FeetOverTimeOptions): Chart {
  const { feet } = options;
  const visits = [...new Set(rows.map(({ visit }) => visit))];
  const table = tableOf(rows, visits, feet);
  const title = "Thrush grade of each foot, visit by visit";
  if (rows.length === 0) return emptyChart({ title, why: "No visit has been recorded.", table });
  const stepPx = Math.max(columnPx, Math.min(90, narrowestPx / visits.length));
  const axis = { domain: false, ticks: false, titlePadding: 4 };
  const x = {
    field: "visit",
    type: "nominal",
    sort: visits,
    title: "Visit",
    axis: { ...axis, labelAngle: 0, labelPadding: 6, labelExpr: yearBelow, titleAnchor: "start" },
  };
  const aboveItsLabels = { titleAngle: 0, titleAlign: "right", titleBaseline: "bottom", titleX: -8, titleY: -4 };
  const y = { field: "foot", type: "nominal", sort: feet, title: "Foot", axis: { ...axis, ...aboveItsLabels, labelPadding: 8 } };
  const grade = {
    condition: shades.map((value, at) => ({ test: `datum.grade === ${at}`, value })),
    value: palette.paper,
  };
  return chartOf({
    title,
    explained: [
      "Dash: not graded. Cross: not looked at. Heavy edge: a finding of that day is the vet's. Columns are visits, not equal times.",
    ],
    reading: readingOf(rows, feet),
    table,
    widthPx: Math.max(narrowestPx, visits.length * stepPx) + 90,
    body: {
      width: visits.length * stepPx,
      height: feet.length * rowPx,
      data: { values: rows.map((row) => ({ ...row, label: labelOf(row) })) },
      encoding: { x, y },
      layer: [
        {
          mark: { type: "rect", stroke: palette.grey, strokeWidth: 0.8, width: stepPx - 4, height: rowPx - 4 },
          encoding: {
            color: grade,
            stroke: { condition: { test: "datum.vet", value: palette.black }, value: palette.grey },
            strokeWidth: { condition: { test: "datum.vet", value: 2.6 }, value: 0.8 },
            tooltip: [
              { field: "visit", type: "nominal", title: "Visit" },
              { field: "foot", type: "nominal", title: "Foot" },
              { field: "label", type: "nominal", title: "Grade" },
            ],
          },
        },
        {
          mark: { type: "text", fontSize: 13, color: palette.black },
          encoding: { text: { field: "label", type: "nominal" } },
        },
      ],
    },
  });
}

function labelOf({ grade, notSeen }: FeetOverTimeRow): string {
  return grade !== null ? String(grade) : notSeen ? "×" : "–";
}

function readingOf(rows: readonly FeetOverTimeRow[], feet: readonly string[]): string {
  const said = feet.flatMap((foot) => {
    const own = rows.filter((row) => row.foot === foot);
    return own.length === 0 ? [] : [`${foot} ${own.map(labelOf).join(" ")}`];
  });
  return `Grades by visit, oldest first: ${said.join("; ")}.`;
}

function tableOf(rows: readonly FeetOverTimeRow[], visits: readonly string[], feet: readonly string[]): Table {
  const at = (visit: string, foot: string) => rows.find((row) => row.visit === visit && row.foot === foot);
  const marked = (row: FeetOverTimeRow | undefined) =>
    row === undefined ? null : `${row.grade ?? (row.notSeen ? "not looked at" : "not graded")}${row.vet ? " (the vet's)" : ""}`;
  return {
    caption: "Thrush grade of each foot, visit by visit",
    columns: [{ name: "visit", title: "Visit" }, ...feet.map((foot) => ({ name: foot, title: foot }))],
    rows: visits.map((visit) => ({ visit, ...Object.fromEntries(feet.map((foot) => [foot, marked(at(visit, foot))])) })),
  };
}
