import type { Chart } from "./Chart.js";
import { chartOf } from "./parts/chartOf.js";
import { emptyChart } from "./parts/emptyChart.js";
import { monthAxis } from "./parts/monthAxis.js";
import { monthText } from "./parts/monthText.js";
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

/**
 * The share of feet that were cases (points, joined from month to month) above the rain (bars), two panels a yard on one month axis; all yards on the same scales. Two panels
 * and not two scales in one, so that no crossing suggests a link that the numbers do not carry.
 */
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
  const drawn = rows.filter(({ yardId }) => yards.includes(yardId));
  const scales: Scales = {
    months: drawn.map(({ month }) => month),
    share: Math.max(0.05, ...drawn.map(({ share }) => share ?? 0)),
    rainMm: Math.max(1, ...drawn.map(({ rainMm }) => rainMm ?? 0)),
  };
  return chartOf({
    title,
    explained: [
      `Points: share of the feet seen at the yard with thrush (${caseDefinition}); bars: rain of the month at its gauge. Same scales for all yards.`,
      "A month with a day unread has no bar. One yard in one month is few feet: how many, and the numbers, stand in the table.",
      ...(left > 0 ? [`${left} more ${left === 1 ? "yard stands" : "yards stand"} in the table.`] : []),
    ],
    reading: `${some(yards.length, "yard")}, ${some(new Set(rows.map(({ month }) => month)).size, "month")}; the numbers stand in the table.`,
    table,
    widthPx: 640,
    body: {
      columns: 2,
      concat: yards.map((yard) =>
        panel(
          yard,
          drawn.filter(({ yardId }) => yardId === yard),
          scales,
        ),
      ),
    },
  });
}

function some(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? "" : "s"}`;
}

interface Scales {
  readonly months: readonly string[];
  readonly share: number;
  readonly rainMm: number;
}

/** One yard: the share of feet above the rain. */
function panel(yard: string, rows: readonly YardMonthRow[], { months, share, rainMm }: Scales): Record<string, unknown> {
  const named = rows.map((row) => ({ ...row, name: monthText(row.month) }));
  const tooltip = [
    { field: "name", type: "nominal", title: "Month" },
    { field: "share", type: "quantitative", title: "Share of feet with thrush", format: ".0%" },
    { field: "n", type: "quantitative", title: "of feet seen" },
    { field: "rainMm", type: "quantitative", title: "Rain (mm)", format: ",.0f" },
  ];
  const above = {
    x: monthAxis(months, false, mostLabels).encoding,
    y: {
      field: "share",
      type: "quantitative",
      title: "Feet with thrush",
      scale: { domain: [0, share], nice: true },
      axis: { format: "~%", tickCount: 3 },
    },
  };
  return {
    // With the space no yard, whatever it is called (`constructor`, `if`), is a word of the language in which Vega writes its titles.
    title: { text: `${yard} `, fontSize: 13, fontWeight: 600, anchor: "start", frame: "group", offset: 4 },
    data: { values: named },
    spacing: 8,
    vconcat: [
      {
        width: 236,
        height: 84,
        layer: [
          ...joined(named).map((run) => ({
            data: { values: run },
            mark: { type: "line", color: palette.ink, strokeWidth: 1.2 },
            encoding: above,
          })),
          {
            transform: [{ filter: "isValid(datum.share)" }],
            mark: { type: "point", filled: true, color: palette.ink, opacity: 1, size: 26 },
            encoding: { ...above, tooltip },
          },
        ],
      },
      {
        width: 236,
        height: 56,
        transform: [{ filter: "isValid(datum.rainMm)" }],
        mark: { type: "bar", color: palette.skyBlue, stroke: palette.blue, strokeWidth: 1, width: { band: 0.7 } },
        encoding: {
          x: monthAxis(months, true, mostLabels).encoding,
          y: {
            field: "rainMm",
            type: "quantitative",
            title: "Rain (mm)",
            scale: { domain: [0, rainMm], nice: true },
            axis: { tickCount: 3 },
          },
          tooltip,
        },
      },
    ],
  };
}

const mostLabels = 7;

/** Runs of two or more rows with a share whose months follow each other, so that no line crosses a month without one. */
function joined(rows: readonly YardMonthRow[]): YardMonthRow[][] {
  const seen = rows.filter(({ share }) => share !== null).sort((a, b) => (a.month < b.month ? -1 : 1));
  const starts = seen.flatMap((row, place) => {
    const before = seen[place - 1];
    return before === undefined || numberOf(row) !== numberOf(before) + 1 ? [place] : [];
  });
  return starts.map((start, place) => seen.slice(start, starts[place + 1])).filter((run) => run.length > 1);
}

function numberOf({ month }: YardMonthRow): number {
  return Number(month.slice(0, 4)) * 12 + Number(month.slice(5, 7));
}
