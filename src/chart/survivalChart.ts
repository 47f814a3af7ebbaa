import type { Chart } from "./Chart.js";
import { cellText } from "./cellText.js";
import { chartOf } from "./parts/chartOf.js";
import { emptyChart } from "./parts/emptyChart.js";
import { palette } from "./parts/palette.js";
import { proportionText } from "./parts/proportionText.js";
import type { Table } from "./Table.js";
import { levelText } from "./parts/levelText.js";

/** One curve of a share that comes down with time, estimated elsewhere. */
export interface SurvivalLine {
  readonly name: string;
  /** Things watched. */
  readonly n: number;
  /** Longest time watched: the line is drawn up to here. */
  readonly longest: number;
  /** The share from each time on, in order; before the first it is 1. Limits are null where there are none. */
  readonly steps: readonly {
    readonly time: number;
    readonly survival: number;
    readonly lower: number | null;
    readonly upper: number | null;
  }[];
  /** The curve at times a reader asks for: the table, and the reading in words. */
  readonly readings: readonly {
    readonly time: number;
    readonly atRisk: number;
    readonly estimate: number;
    readonly lower: number | null;
    readonly upper: number | null;
  }[];
}

export interface SurvivalChartOptions {
  /** The finding. */
  readonly title: string;
  /** Time, with its unit: `Days since the shoe was nailed on`. */
  readonly timeTitle: string;
  /** What the share is of: `Shoes still on`. */
  readonly shareTitle: string;
  /** What `n` counts, in the plural. */
  readonly unit: string;
  readonly level: number;
  /** What must be said of the bands: `taking shoes as independent`. */
  readonly intervalNote: string;
}

const widthPx = 480;
const colours = [palette.blue, palette.vermillion, palette.grey] as const;
const dashes = [
  [1, 0],
  [7, 3],
  [2, 3],
] as const;

/** Curves of a share that comes down in steps, each with its band and its name at the end; at most three. */
export function survivalChart(lines: readonly SurvivalLine[], options: SurvivalChartOptions): Chart {
  const table = tableOf(lines, options);
  const drawn = lines.filter((line) => line.steps.length > 0).slice(0, colours.length);
  if (drawn.length === 0)
    return emptyChart({ title: options.title, why: "Nothing came to an end, so there is no curve.", table });
  return chartOf({
    title: options.title,
    explained: [
      `Lines: ${options.shareTitle.slice(0, 1).toLowerCase()}${options.shareTitle.slice(1)}. Bands: ${levelText(options.level)} interval, ${options.intervalNote}.`,
      `${drawn.map(({ name, n }) => `${drawn.length === 1 ? "" : `${name}: `}${cellText(n, { digits: 0 })} ${options.unit}`).join("; ")}.`,
    ],
    reading: readingOf(drawn, options),
    table,
    widthPx: widthPx + 130,
    body: {
      width: widthPx,
      height: 250,
      data: { values: drawn.flatMap((line) => valuesOf(line, options.level)) },
      layer: layersOf(drawn, options),
    },
  });
}

function valuesOf(line: SurvivalLine, level: number): Record<string, unknown>[] {
  const start = { time: 0, survival: 1, lower: 1, upper: 1 };
  const last = line.steps.at(-1) ?? start;
  const end = line.longest > last.time ? [{ ...last, time: line.longest }] : [];
  const rows = [start, ...line.steps, ...end];
  const percent = (value: number) => cellText(value, { percent: true });
  return rows.map(({ time, survival, lower, upper }, place) => ({
    name: line.name,
    ...{ time, survival, lower, upper },
    share: `${percent(survival)} (${lower === null || upper === null ? "no interval" : `${percent(level)} interval ${percent(lower)} to ${percent(upper)}`})`,
    last: place === rows.length - 1,
  }));
}

function layersOf(lines: readonly SurvivalLine[], options: SurvivalChartOptions): Record<string, unknown>[] {
  const names = lines.map(({ name }) => name);
  const colour = (range: readonly unknown[]) => ({
    field: "name",
    type: "nominal",
    scale: { domain: names, range: range.slice(0, names.length) },
    legend: null,
  });
  const x = { field: "time", type: "quantitative", title: options.timeTitle, scale: { nice: false }, axis: { grid: false } };
  const y = {
    type: "quantitative",
    title: options.shareTitle,
    scale: { domain: [0, 1] },
    axis: { format: "~%", tickCount: 5 },
  };
  const ends = {
    transform: [{ filter: "datum.last" }],
    mark: { type: "text", align: "left", dx: 6, fontSize: 13, fontWeight: 600 },
    encoding: { x, y: { ...y, field: "survival" }, text: { field: "name", type: "nominal" }, color: colour(colours) },
  };
  return [
    {
      transform: [{ filter: "isValid(datum.lower) && isValid(datum.upper)" }],
      mark: { type: "area", interpolate: "step-after", opacity: 0.16 },
      encoding: { x, y: { ...y, field: "lower" }, y2: { field: "upper" }, color: colour(colours) },
    },
    {
      mark: { type: "line", interpolate: "step-after", strokeWidth: 2.5 },
      encoding: {
        x,
        y: { ...y, field: "survival" },
        color: colour(colours),
        strokeDash: {
          field: "name",
          type: "nominal",
          scale: { domain: names, range: dashes.slice(0, names.length) },
          legend: null,
        },
      },
    },
    {
      // Unseen: what the pointer meets, since a line as a whole has one tooltip only.
      mark: { type: "point", opacity: 0, filled: true, size: 150 },
      encoding: {
        x,
        y: { ...y, field: "survival" },
        tooltip: [
          { field: "name", type: "nominal", title: "Group" },
          { field: "time", type: "quantitative", title: options.timeTitle, format: ",d" },
          { field: "share", type: "nominal", title: options.shareTitle },
        ],
      },
    },
    ...(names.length === 1 ? [] : [ends]),
  ];
}

function readingOf(lines: readonly SurvivalLine[], { shareTitle, level }: SurvivalChartOptions): string {
  const said = lines.map(({ name, readings }) => {
    const at = readings.map(
      ({ time, estimate, lower, upper, atRisk }) =>
        `${proportionText({ estimate, lower, upper, cases: 0, n: atRisk }, level, "still watched")} at ${time} days`,
    );
    return `${name} ${at.length === 0 ? "not watched long enough to read off" : at.join(", ")}`;
  });
  return `${shareTitle}: ${said.join("; ")}.`;
}

function tableOf(lines: readonly SurvivalLine[], { shareTitle, timeTitle, unit, level }: SurvivalChartOptions): Table {
  const interval = `${levelText(level)} interval`;
  return {
    caption: `${shareTitle}, read off the curves`,
    columns: [
      { name: "name", title: "Group" },
      { name: "time", title: timeTitle, digits: 0 },
      { name: "atRisk", title: `${unit.slice(0, 1).toUpperCase()}${unit.slice(1)} still watched` },
      { name: "estimate", title: "Share", percent: true },
      { name: "lower", title: `${interval}, from`, percent: true },
      { name: "upper", title: "to", percent: true },
    ],
    rows: lines.flatMap(({ name, readings }) =>
      readings.map(({ time, atRisk, estimate, lower, upper }) => ({ name, time, atRisk, estimate, lower, upper })),
    ),
  };
}
