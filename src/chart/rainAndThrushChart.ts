import type { Chart } from "./Chart.js";
import { cellText } from "./cellText.js";
import { capital } from "./parts/capital.js";
import { chartOf } from "./parts/chartOf.js";
import { countLayers } from "./parts/countLayers.js";
import { countsFit } from "./parts/countsFit.js";
import { emptyChart } from "./parts/emptyChart.js";
import { greyedRows } from "./parts/greyedRows.js";
import { intervalLayers } from "./parts/intervalLayers.js";
import { linkedMonths, type LinkedMonths } from "./parts/linkedMonths.js";
import { monthAxis } from "./parts/monthAxis.js";
import { monthText } from "./parts/monthText.js";
import { palette } from "./parts/palette.js";
import { proportionColumns } from "./parts/proportionColumns.js";
import { proportionText } from "./parts/proportionText.js";
import type { ProportionRow } from "./ProportionRow.js";
import type { Table } from "./Table.js";
import { levelText } from "./parts/levelText.js";

/** One month: the share with thrush, and the rain of the whole month; null when its record is not complete. */
export interface MonthRow extends ProportionRow {
  /** `YYYY-MM`. */
  readonly month: string;
  readonly rainMm: number | null;
}

export interface RainAndThrushOptions {
  /** The finding; without it, the worst month is named. */
  readonly title?: string;
  /** Confidence level of the limits in the rows, between 0 and 1. */
  readonly level: number;
  /** What `n` counts, in the plural: `horses`. */
  readonly unit: string;
  /** What counts as thrush here: `grade 1 or more on any foot`. */
  readonly caseDefinition: string;
  /** Why rows with `tooFew` are grey: `fewer than 5 horses`. */
  readonly tooFewReason?: string;
}

/**
 * Thrush by month above rain by month, on one month axis. Two panels and not two scales in one, so that no crossing of lines
 * suggests a link that the numbers do not carry. Months without a row stay as gaps; a month without a rain total says so; where no month
 * has one, the panel is left out. Where the drawing is live, the month under the pointer is lit in both panels, with all its numbers.
 */
export function rainAndThrushChart(rows: readonly MonthRow[], options: RainAndThrushOptions): Chart {
  const reason = options.tooFewReason ?? "too few to judge";
  const table = tableOf(rows, options, reason);
  const empty = (why: string) => emptyChart({ title: options.title ?? "Thrush and rain by month", why, table });
  if (rows.length === 0) return empty("No month has been recorded yet.");
  if (rows.every((row) => row.estimate === null && row.rainMm === null))
    return empty("No month has a share with thrush or a rain total.");
  const worst = extreme(rows, (a, b) => a > b);
  const months = rows.map((row) => row.month);
  const { months: span } = monthAxis(months, true);
  const widthPx = span <= few ? 320 : 580;
  const counts = countsFit(rows, widthPx / span);
  // A panel without a value has no scale to draw.
  const anyRain = rows.some((row) => row.rainMm !== null);
  const anyShare = rows.some((row) => row.estimate !== null);
  const panels = [...(anyShare ? ["thrush"] : []), ...(anyRain ? ["rain"] : [])];
  const linked = linkedMonths(panels, tooltip);
  return chartOf({
    title: options.title ?? titleOf(rows, worst),
    explained: [
      `Above: share of ${options.unit} with thrush (${options.caseDefinition}) and ${levelText(options.level)} interval${counts ? `; n: ${options.unit}` : ""}.`,
      anyRain ? "Below: rain of the month." : "No month has a rain total.",
      ...(rows.some((row) => row.tooFew === true) ? [`Grey, dashed, hollow: ${reason}.`] : []),
    ],
    reading: readingOf(rows, worst, options),
    table,
    widthPx: widthPx + 60,
    body: {
      data: { values: rows.map((row) => ({ ...row, tooFew: row.tooFew === true, ...saidOf(row, options) })) },
      params: linked.params,
      spacing: 14,
      vconcat: [
        ...(anyShare ? [thrushPanel(months, widthPx, options, { counts, lowest: !anyRain, linked })] : []),
        ...(anyRain ? [rainPanel(months, widthPx, linked)] : []),
      ],
    },
  });
}

// Up to so many months the drawing is narrow, so that one bar does not fill a page.
const few = 6;

function titleOf(rows: readonly MonthRow[], worst: MonthRow | null): string {
  if (worst === null) return "Rain by month";
  return rows.length === 1
    ? `Thrush and rain in ${monthText(worst.month)}`
    : `Thrush was most frequent in ${monthText(worst.month)}`;
}

// Words and not numbers, so that what is missing is said. The fields of saidOf.
const tooltip = [
  { field: "name", type: "nominal", title: "Month" },
  { field: "shareText", type: "nominal", title: "With thrush" },
  { field: "rainText", type: "nominal", title: "Rain" },
];

function saidOf(row: MonthRow, { level, unit }: RainAndThrushOptions): Readonly<Record<string, string>> {
  return {
    name: monthText(row.month),
    shareText: row.estimate === null ? `no share, ${cellText(row.n, { digits: 0 })} ${unit}` : proportionText(row, level, unit),
    rainText: row.rainMm === null ? "no total" : `${cellText(row.rainMm, { digits: 0 })} mm`,
  };
}

function thrushPanel(
  months: readonly string[],
  width: number,
  options: RainAndThrushOptions,
  { counts, lowest, linked }: { readonly counts: boolean; readonly lowest: boolean; readonly linked: LinkedMonths },
): Record<string, unknown> {
  const { encoding: x } = monthAxis(months, lowest);
  return {
    width,
    height: 190,
    layer: [
      linked.layerOf("thrush", x),
      ...intervalLayers({
        x,
        y: {
          type: "quantitative",
          title: `${capital(options.unit)} with thrush`,
          scale: { zero: true, nice: true },
          axis: { format: "~%", tickCount: 5 },
        },
        tooltip,
      }),
      ...(counts ? countLayers(x) : []),
    ],
  };
}

function rainPanel(months: readonly string[], width: number, linked: LinkedMonths): Record<string, unknown> {
  const { encoding: x, months: span } = monthAxis(months, true);
  return {
    width,
    height: 110,
    layer: [
      linked.layerOf("rain", x),
      {
        transform: [{ filter: "isValid(datum.rainMm)" }],
        mark: {
          type: "bar",
          color: palette.skyBlue,
          stroke: palette.blue,
          strokeWidth: 1,
          width: span <= few ? 36 : { band: 0.7 },
        },
        encoding: {
          x,
          y: { field: "rainMm", type: "quantitative", title: "Rain (mm)", scale: { zero: true }, axis: { tickCount: 4 } },
          tooltip,
        },
      },
      {
        transform: [{ filter: "!isValid(datum.rainMm)" }],
        mark: { type: "text", text: "no total", angle: 270, align: "left", color: palette.quietInk },
        encoding: { x, y: { value: 104 } },
      },
    ],
  };
}

type Judged = MonthRow & { readonly estimate: number };

function extreme(rows: readonly MonthRow[], better: (a: number, b: number) => boolean): Judged | null {
  let found: Judged | null = null;
  for (const row of rows) {
    const { estimate } = row;
    if (estimate === null || row.tooFew === true) continue;
    if (found === null || better(estimate, found.estimate)) found = { ...row, estimate };
  }
  return found;
}

function readingOf(rows: readonly MonthRow[], worst: MonthRow | null, options: RainAndThrushOptions): string {
  const said = (row: MonthRow) => `${monthText(row.month)}: ${proportionText(row, options.level, options.unit)}`;
  const best = extreme(rows, (a, b) => a < b);
  const thrush =
    worst === null || best === null
      ? "No month has enough to give a share with thrush."
      : worst.month === best.month
        ? `Thrush in ${said(worst)}.`
        : `Thrush was most frequent in ${said(worst)}, least in ${said(best)}.`;
  let wettest: MonthRow | null = null;
  for (const row of rows) if (row.rainMm !== null && row.rainMm > (wettest?.rainMm ?? -1)) wettest = row;
  const rain =
    wettest === null
      ? "No month has a rain total."
      : `Most rain: ${cellText(wettest.rainMm, { digits: 0 })} mm in ${monthText(wettest.month)}.`;
  return `${thrush} ${rain}`;
}

function tableOf(rows: readonly MonthRow[], options: RainAndThrushOptions, reason: string): Table {
  return {
    caption: `Thrush (${options.caseDefinition}) and rain by month`,
    columns: [
      { name: "month", title: "Month" },
      ...proportionColumns(options.unit, "With thrush", options.level),
      { name: "rainMm", title: "Rain (mm)", digits: 0 },
    ],
    rows: rows.map(({ month, cases, n, estimate, lower, upper, rainMm }) => ({
      month: monthText(month),
      cases,
      n,
      estimate,
      lower,
      upper,
      rainMm,
    })),
    greyed: greyedRows(rows, reason),
  };
}
