import type { Chart } from "./Chart.js";
import { chartOf } from "./parts/chartOf.js";
import { emptyChart } from "./parts/emptyChart.js";
import { palette } from "./parts/palette.js";
import type { Table } from "./Table.js";
import { levelText } from "./parts/levelText.js";

/** An odds ratio at one place of a curve, with limits for the place and for the whole curve. */
export interface ProfileRow {
  readonly place: number;
  readonly estimate: number;
  readonly lower: number;
  readonly upper: number;
  readonly lowerTogether: number;
  readonly upperTogether: number;
}

export interface RatioProfileOptions {
  readonly title: string;
  /** What the places are: `Days before the visit`. */
  readonly placeTitle: string;
  /** What the ratio is of. */
  readonly ratioTitle: string;
  readonly level: number;
}

const widthPx = 460;

function wordsOf(row: ProfileRow): { readonly ratioText: string; readonly wholeText: string } {
  const said = (value: number) => value.toFixed(2);
  return {
    ratioText: `${said(row.estimate)} (${said(row.lower)} to ${said(row.upper)})`,
    wholeText: `${said(row.lowerTogether)} to ${said(row.upperTogether)}`,
  };
}

/** Odds ratios along days or exposures as a line; a dark band holds each place, a pale band with dashed edges the whole curve; a line at 1. */
export function ratioProfileChart(rows: readonly ProfileRow[], options: RatioProfileOptions): Chart {
  const { title, placeTitle, ratioTitle, level } = options;
  const interval = `${levelText(level)} interval`;
  const table: Table = {
    caption: title,
    columns: [
      { name: "place", title: placeTitle },
      { name: "estimate", title: ratioTitle, digits: 3 },
      { name: "lower", title: `${interval} of the place, from`, digits: 3 },
      { name: "upper", title: "to", digits: 3 },
      { name: "lowerTogether", title: `${interval} of the whole curve, from`, digits: 3 },
      { name: "upperTogether", title: "to", digits: 3 },
    ],
    rows: rows.map((row) => ({ ...row })),
  };
  const highest = rows.reduce<ProfileRow | null>(
    (most, row) => (most === null || row.estimate > most.estimate ? row : most),
    null,
  );
  if (highest === null) return emptyChart({ title, why: "The curve could not be estimated.", table });
  const x = {
    field: "place",
    type: "quantitative",
    title: placeTitle,
    axis: { grid: false },
    scale: { zero: false, nice: false },
  };
  const y = {
    type: "quantitative",
    title: ratioTitle,
    scale: { type: "log", nice: false },
    axis: { tickCount: 6, format: ".3~g" },
  };
  const edge = (field: string) => ({
    mark: { type: "line", color: palette.grey, strokeDash: [4, 3], strokeWidth: 1 },
    encoding: { x, y: { ...y, field } },
  });
  const band = (color: string, opacity: number, lower: string, upper: string) => ({
    mark: { type: "area", color, opacity },
    encoding: { x, y: { ...y, field: lower }, y2: { field: upper } },
  });
  return chartOf({
    title,
    explained: [`Dark band: ${interval} of each place by itself. Pale band with dashed edges: of the whole curve. Log scale.`],
    reading: `Highest at ${highest.place}: ${highest.estimate.toFixed(2)} (${interval} of the place ${highest.lower.toFixed(2)} to ${highest.upper.toFixed(2)}, of the whole curve ${highest.lowerTogether.toFixed(2)} to ${highest.upperTogether.toFixed(2)}).`,
    table,
    widthPx: widthPx + 60,
    body: {
      width: widthPx,
      height: 240,
      data: { values: rows.map((row) => ({ ...row, ...wordsOf(row) })) },
      layer: [
        band(palette.paleGrey, 0.35, "lowerTogether", "upperTogether"),
        band(palette.skyBlue, 0.5, "lower", "upper"),
        edge("lowerTogether"),
        edge("upperTogether"),
        {
          data: { values: [{}] },
          mark: { type: "rule", stroke: palette.quietInk, strokeDash: [2, 2] },
          encoding: { y: { ...y, datum: 1 } },
        },
        { mark: { type: "line", color: palette.blue, strokeWidth: 2.5 }, encoding: { x, y: { ...y, field: "estimate" } } },
        {
          // Unseen: what the pointer meets, since a line as a whole has one tooltip only.
          mark: { type: "rule", opacity: 0, strokeWidth: Math.min(12, Math.max(2, widthPx / rows.length)) },
          encoding: {
            x,
            tooltip: [
              { field: "place", type: "quantitative", title: placeTitle, format: ",~r" },
              { field: "ratioText", type: "nominal", title: ratioTitle },
              { field: "wholeText", type: "nominal", title: `${interval} of the whole curve` },
            ],
          },
        },
      ],
    },
  });
}
