import type { Chart } from "./Chart.js";
import { capital } from "./parts/capital.js";
import { chartOf } from "./parts/chartOf.js";
import { emptyChart } from "./parts/emptyChart.js";
import { palette } from "./parts/palette.js";
import type { Table } from "./Table.js";

/** One measure of one foot, beside the band in which most feet of that end of the herd lie. */
export interface FourFeetRow {
  readonly foot: "near fore" | "off fore" | "near hind" | "off hind";
  /** `Frog index`. */
  readonly measure: string;
  readonly value: number;
  /** The value as it is written: `0.64`, `5.0°`. */
  readonly text: string;
  readonly lower: number;
  readonly median: number;
  readonly upper: number;
}

export interface FourFeetOptions {
  /** `Bess on 6 January 2026`. */
  readonly title: string;
  /** `after trimming; band: 2.5 to 97.5 percentile of this herd`. */
  readonly taken: string;
  /** Measures from top to bottom. */
  readonly measures: readonly string[];
}

const places = [
  ["near fore", "off fore"],
  ["near hind", "off hind"],
] as const;
const panel = { width: 220, rowPx: 26 } as const;
/** A value far outside is drawn at the edge; its figure is written beside it. */
const reach = 0.45;

/**
 * Four feet of one horse at one visit, near feet left and off feet right, front above hind: a row for each measure, the shaded part being where
 * most feet of that end of the herd lie, with its median as a tick. What lies outside is dark orange and square.
 */
export function fourFeetChart(rows: readonly FourFeetRow[], options: FourFeetOptions): Chart {
  const { title, taken, measures } = options;
  const table = tableOf(rows, options);
  if (rows.length === 0) return emptyChart({ title, why: "No foot was measured at this visit.", table });
  const outside = rows.filter(({ value, lower, upper }) => value < lower || value > upper);
  return chartOf({
    title,
    explained: [
      `${capital(taken)}. Tick: median. Square: outside the band, which says unusual here, not unsound. No bar: not measured.`,
    ],
    reading:
      outside.length === 0
        ? `Every measure drawn, ${rows.length} in all, lies in the band of this herd.`
        : `Outside the bands of this herd: ${outside.map(({ foot, measure, text }) => `${foot}, ${measure.toLowerCase()} ${text}`).join("; ")}.`,
    table,
    widthPx: 2 * panel.width + 220,
    body: {
      vconcat: places.map((pair) => ({
        hconcat: pair.map((foot, column) =>
          panelOf(
            rows.filter((row) => row.foot === foot),
            foot,
            measures,
            column === 0,
          ),
        ),
        spacing: 28,
      })),
      spacing: 20,
    },
  });
}

const aboveItsLabels = { titleAngle: 0, titleAlign: "right", titleBaseline: "bottom", titleX: -8, titleY: -4 } as const;

function panelOf(rows: readonly FourFeetRow[], foot: string, measures: readonly string[], labelled: boolean): object {
  const y = {
    field: "measure",
    type: "nominal",
    sort: measures,
    scale: { domain: measures },
    axis: {
      title: labelled ? "Measure" : null,
      labels: labelled,
      ticks: false,
      domain: false,
      labelPadding: 8,
      ...aboveItsLabels,
    },
  };
  const x = { type: "quantitative", scale: { domain: [-reach - 0.05, 2], nice: false }, axis: null };
  const values = rows.map((row) => {
    const span = row.upper - row.lower || 1;
    const place = (value: number) => Math.min(1 + reach, Math.max(-reach, (value - row.lower) / span));
    const out = row.value < row.lower || row.value > row.upper;
    const usual = `${row.lower.toFixed(2)} to ${row.upper.toFixed(2)}`;
    return {
      measure: row.measure,
      text: row.text,
      usual,
      place: place(row.value),
      median: place(row.median),
      from: 0,
      to: 1,
      out,
    };
  });
  const tooltip = [
    { field: "measure", type: "nominal", title: "Measure" },
    { field: "text", type: "nominal", title: "This foot" },
    { field: "usual", type: "nominal", title: "Band" },
  ];
  return {
    title: { text: foot, fontSize: 13, fontWeight: 600, anchor: "start", offset: 4 },
    width: panel.width,
    height: panel.rowPx * measures.length,
    data: { values },
    layer: [
      {
        mark: { type: "bar", color: palette.skyBlue, opacity: 0.35, height: 16 },
        encoding: { y, x: { ...x, field: "from" }, x2: { field: "to" }, tooltip },
      },
      {
        mark: { type: "tick", color: palette.blue, thickness: 2, size: 16 },
        encoding: { y, x: { ...x, field: "median" } },
      },
      {
        mark: { type: "point", filled: true, size: 70, opacity: 1 },
        encoding: {
          ...{ y, x: { ...x, field: "place" }, tooltip },
          color: { condition: { test: "datum.out", value: palette.vermillion }, value: palette.ink },
          shape: { condition: { test: "datum.out", value: "square" }, value: "circle" },
        },
      },
      // What lies outside is heavier as well as coloured, so that it does not turn pale in grey.
      ...[false, true].map((out) => ({
        transform: [{ filter: out ? "datum.out" : "!datum.out" }],
        mark: {
          type: "text",
          align: "right",
          fontSize: 12,
          ...(out ? { fontWeight: 700, color: "#a84a00" } : { color: palette.ink }),
        },
        encoding: { y, x: { value: panel.width }, text: { field: "text", type: "nominal" } },
      })),
    ],
  };
}

function tableOf(rows: readonly FourFeetRow[], { title, taken }: FourFeetOptions): Table {
  return {
    caption: `${title}, ${taken}`,
    columns: [
      { name: "foot", title: "Foot" },
      { name: "measure", title: "Measure" },
      { name: "text", title: "Value" },
      { name: "lower", title: "Usual from", digits: 2 },
      { name: "upper", title: "to", digits: 2 },
    ],
    rows: rows.map(({ foot, measure, text, lower, upper }) => ({ foot, measure, text, lower, upper })),
  };
}
