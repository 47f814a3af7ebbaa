import type { Chart } from "./Chart.js";
import { cellText } from "./cellText.js";
import { chartOf } from "./parts/chartOf.js";
import { emptyChart } from "./parts/emptyChart.js";
import { palette } from "./parts/palette.js";
import type { Table } from "./Table.js";
import { levelText } from "./parts/levelText.js";

/** One odds ratio of a forest. Missing is null: its line stays, without a mark. */
export interface ForestRow {
  readonly label: string;
  readonly estimate: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly n: number | null;
  /** Drawn as a filled square, the others as hollow circles. */
  readonly primary?: boolean;
}

export interface ForestOptions {
  readonly title: string;
  /** What the ratio is of: `Odds ratio of thrush per 10 mm of rain`. */
  readonly ratioTitle: string;
  readonly level: number;
  /** What `n` counts. */
  readonly unit: string;
  /** What a filled square is: `the declared analysis` when left out. */
  readonly filled?: string;
  /** Further lines under the title. */
  readonly explained?: readonly string[];
}

const widthPx = 340;

/** Odds ratios with their intervals, one line each in the order of the rows, on a log axis; a line at 1, the number behind each at the right. */
export function forestChart(rows: readonly ForestRow[], options: ForestOptions): Chart {
  const { title, ratioTitle, level, unit, filled = "the declared analysis", explained = [] } = options;
  const interval = `${levelText(level)} interval`;
  const table: Table = {
    caption: title,
    columns: [
      { name: "label", title: "Estimate" },
      { name: "estimate", title: "Odds ratio", digits: 3 },
      { name: "lower", title: `${interval}, from`, digits: 3 },
      { name: "upper", title: "to", digits: 3 },
      { name: "n", title: unit },
    ],
    rows: rows.map(({ label, estimate, lower, upper, n }) => ({ label, estimate, lower, upper, n })),
  };
  const drawn = rows.map((row) => ({
    ...row,
    primary: row.primary === true,
    count: cellText(row.n, { digits: 0 }),
    ...drawable(row),
  }));
  if (drawn.every(({ estimate }) => estimate === null))
    return emptyChart({ title, why: "None of these could be estimated.", table });
  const y = {
    field: "label",
    type: "nominal",
    sort: null,
    title: "Analysis",
    axis: {
      domain: false,
      ticks: false,
      labelPadding: 8,
      labelLimit: 320,
      titleAngle: 0,
      titleAlign: "right",
      titleBaseline: "bottom",
      titleX: -8,
      titleY: -6,
    },
  };
  const x = {
    type: "quantitative",
    scale: { type: "log", nice: false, padding: 10 },
    title: `${ratioTitle} (log scale)`,
    axis: { tickCount: 6, format: ".3~g" },
  };
  const tooltip = [
    { field: "label", type: "nominal", title: "Estimate" },
    { field: "estimate", type: "quantitative", title: "Odds ratio", format: ".3f" },
    { field: "lower", type: "quantitative", title: "From", format: ".3f" },
    { field: "upper", type: "quantitative", title: "To", format: ".3f" },
  ];
  const by = (then: unknown, otherwise: unknown) => ({ condition: { test: "datum.primary", value: then }, value: otherwise });
  return chartOf({
    title,
    explained: [
      `Point and ${interval}${drawn.some(({ primary }) => primary) ? `; a filled square is ${filled}` : ""}. n: ${unit}.`,
      ...explained,
    ],
    reading: `${ratioTitle}: ${rows.map((row) => said(row)).join("; ")}.`,
    table,
    widthPx: widthPx + 330,
    body: {
      width: widthPx,
      height: { step: 26 },
      data: { values: drawn },
      layer: [
        {
          data: { values: [{}] },
          mark: { type: "rule", stroke: palette.quietInk, strokeDash: [4, 3] },
          encoding: { x: { ...x, datum: 1 } },
        },
        {
          transform: [{ filter: "isValid(datum.lower) && isValid(datum.upper)" }],
          mark: { type: "rule", strokeWidth: 2.5 },
          encoding: { y, x: { ...x, field: "lower" }, x2: { field: "upper" }, color: by(palette.blue, palette.grey), tooltip },
        },
        {
          transform: [{ filter: "isValid(datum.estimate)" }],
          mark: { type: "point", size: 60, strokeWidth: 2, opacity: 1 },
          encoding: {
            y,
            x: { ...x, field: "estimate" },
            shape: by("square", "circle"),
            fill: by(palette.blue, palette.paper),
            stroke: by(palette.blue, palette.grey),
            tooltip,
          },
        },
        {
          data: { values: [{}] },
          mark: { type: "text", text: "n", align: "left", baseline: "bottom", fontStyle: "italic", color: palette.quietInk },
          encoding: { x: { value: widthPx + 8 }, y: { value: -6 } },
        },
        {
          mark: { type: "text", align: "left", color: palette.quietInk },
          encoding: { y, x: { value: widthPx + 8 }, text: { field: "count", type: "nominal" } },
        },
      ],
    },
  });
}

/** Infinite limits cannot be drawn on any axis; the table says them. */
function drawable({ estimate, lower, upper }: ForestRow) {
  const finite = (value: number | null) => (value !== null && Number.isFinite(value) && value > 0 ? value : null);
  return { estimate: finite(estimate), lower: finite(lower), upper: finite(upper) };
}

function said({ label, estimate, lower, upper }: ForestRow): string {
  const number = (value: number | null) => (value === null ? "unknown" : value.toFixed(2));
  return estimate === null ? `${label} not estimated` : `${label} ${number(estimate)} (${number(lower)} to ${number(upper)})`;
}
