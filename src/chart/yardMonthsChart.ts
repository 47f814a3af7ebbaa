import type { Chart } from "./Chart.js";
import { chartOf } from "./parts/chartOf.js";
import { emptyChart } from "./parts/emptyChart.js";
import { palette } from "./parts/palette.js";
import type { Table } from "./Table.js";

/** One yard in one month. */
export interface YardMonthRow {
  readonly yardId: string;
  /** `YYYY-MM`. */
  readonly month: string;
  /** Share of the feet seen that were cases; null when none was seen. */
  readonly share: number | null;
  readonly n: number;
  /** Rain at the yard's gauge; null when a day is missing. */
  readonly rainMm: number | null;
}

const shown = 12;

/** Rain (bars, left axis) and the share of feet that were cases (line and points, right axis) by month, one panel a yard. */
export function yardMonthsChart(
  rows: readonly YardMonthRow[],
  options: { readonly title: string; readonly caseDefinition: string },
): Chart {
  const { title, caseDefinition } = options;
  const table: Table = {
    caption: `Rain and thrush (${caseDefinition}) by yard and month`,
    columns: [
      { name: "yardId", title: "Yard" },
      { name: "month", title: "Month" },
      { name: "rainMm", title: "Rain of the month (mm)", digits: 0 },
      { name: "share", title: "Share of feet with thrush", percent: true },
      { name: "n", title: "of feet seen" },
    ],
    rows: rows.map(({ yardId, month, rainMm, share, n }) => ({ yardId, month, rainMm, share, n })),
  };
  const yards = [...new Set(rows.map(({ yardId }) => yardId))].slice(0, shown);
  if (yards.length === 0) return emptyChart({ title, why: "No yard has a month with a graded frog.", table });
  const left = new Set(rows.map(({ yardId }) => yardId)).size - yards.length;
  const drawn = rows.filter(({ yardId }) => yards.includes(yardId)).map((row) => ({ ...row, date: `${row.month}-01T00:00:00Z` }));
  return chartOf({
    title,
    explained: [
      `Bars: rain of the month at the yard's gauge. Line: share of feet seen with thrush (${caseDefinition}).`,
      ...(left > 0 ? [`${left} more yards stand in the table.`] : []),
    ],
    reading: `${yards.length} yards, ${new Set(rows.map(({ month }) => month)).size} months; the numbers stand in the table.`,
    table,
    widthPx: 640,
    body: {
      columns: 2,
      concat: yards.map((yard) =>
        panel(
          yard,
          drawn.filter(({ yardId }) => yardId === yard),
        ),
      ),
    },
  });
}

/** One yard: bars of rain against the left axis, the share of feet against the right one. */
function panel(yard: string, rows: readonly object[]): Record<string, unknown> {
  const x = {
    field: "date",
    type: "temporal",
    timeUnit: "utcyearmonth",
    title: "Month",
    axis: { format: "%b %y", tickCount: 6, grid: false },
  };
  return {
    title: { text: yard, fontSize: 13, fontWeight: 600, anchor: "start", frame: "group", offset: 4 },
    width: 230,
    height: 100,
    data: { values: rows },
    layer: [
      {
        mark: { type: "bar", color: palette.skyBlue, width: 9 },
        encoding: { x, y: { field: "rainMm", type: "quantitative", title: "Rain (mm)", axis: { grid: false, tickCount: 3 } } },
      },
      {
        transform: [{ filter: "isValid(datum.share)" }],
        mark: { type: "line", color: palette.ink, strokeWidth: 1.5, point: { filled: false, fill: palette.paper, size: 30 } },
        encoding: {
          x,
          y: {
            field: "share",
            type: "quantitative",
            title: "Thrush",
            scale: { domain: [0, 1] },
            axis: { format: ".0%", grid: false, tickCount: 3 },
          },
          tooltip: [
            { field: "month", type: "nominal", title: "Month" },
            { field: "share", type: "quantitative", title: "Share", format: ".0%" },
            { field: "n", type: "quantitative", title: "Feet" },
          ],
        },
      },
    ],
    resolve: { scale: { y: "independent" } },
  };
}
