import type { Chart } from "./Chart.js";
import { cellText } from "./cellText.js";
import { chartOf } from "./parts/chartOf.js";
import { emptyChart } from "./parts/emptyChart.js";
import { palette } from "./parts/palette.js";
import type { Table } from "./Table.js";

/** Shape index, width over length of the ground surface, of one horse's front and hind feet. Missing is null. */
export interface FrontHindRow {
  readonly horseId: string;
  readonly frontIndex: number | null;
  readonly hindIndex: number | null;
}

export interface FrontHindShapeOptions {
  /** The finding; without it, the horses whose front feet are rounder are counted. */
  readonly title?: string;
  /** Medians over the horses drawn, or null when there are too few for one. */
  readonly medians: { readonly front: number; readonly hind: number } | null;
  /** How a horse's index was taken: `mean of the pair, after trimming, last visit`. */
  readonly taken: string;
}

type Pair = FrontHindRow & { readonly frontIndex: number; readonly hindIndex: number };

/**
 * One mark a horse: front feet across, hind feet up, both on one scale, with the line on which the two are equal. So the pairing
 * within the horse stays visible, and a horse on the other side of the line (a label mixed up, or an odd foot) can be found.
 * A horse with either index missing is not drawn and is counted in the reading.
 */
export function frontHindShapeChart(rows: readonly FrontHindRow[], options: FrontHindShapeOptions): Chart {
  const pairs = rows.filter((row): row is Pair => row.frontIndex !== null && row.hindIndex !== null);
  const table = tableOf(rows, options);
  if (pairs.length === 0)
    return emptyChart({
      title: options.title ?? "Shape of front and hind feet",
      why: rows.length === 0 ? "No hoof has been measured yet." : "No horse has both front and hind feet measured.",
      table,
    });
  const rounderInFront = pairs.filter((pair) => pair.frontIndex > pair.hindIndex).length;
  const rounderBehind = pairs.filter((pair) => pair.frontIndex < pair.hindIndex).length;
  const title =
    options.title ?? `Front feet were wider for their length than hind feet in ${rounderInFront} of ${of(pairs.length)}`;
  return chartOf({
    title,
    explained: [
      `One mark a horse (${options.taken}). Shape index: width over length.`,
      `Dashed line: front and hind alike.${options.medians === null ? "" : " Large diamond: the medians."}`,
    ],
    reading: readingOf({ pairs: pairs.length, left: rows.length - pairs.length, rounderInFront, rounderBehind }, options),
    table,
    widthPx: 470,
    body: {
      width: 400,
      height: 400,
      layer: layersOf(pairs, options.medians),
    },
  });
}

function layersOf(pairs: readonly Pair[], medians: FrontHindShapeOptions["medians"]): Record<string, unknown>[] {
  const values = pairs.flatMap((pair) => [pair.frontIndex, pair.hindIndex]);
  const low = Math.floor(Math.min(...values) * 20 - 0.5) / 20;
  const high = Math.ceil(Math.max(...values) * 20 + 0.5) / 20;
  const axis = { format: ".2f", tickCount: 6, grid: true };
  const place = (field: string, title: string) => ({
    field,
    type: "quantitative",
    title,
    scale: { domain: [low, high], zero: false },
    axis,
  });
  const x = place("frontIndex", "Front feet: width / length");
  const y = place("hindIndex", "Hind feet: width / length");
  const at = (frontIndex: number, hindIndex: number) => ({ frontIndex, hindIndex });
  const word = (text: string, color: string, px: { readonly x: number; readonly y: number; readonly align: string }) => ({
    data: { values: [{}] },
    mark: { type: "text", text, color, fontSize: 13, fontWeight: 600, align: px.align },
    encoding: { x: { value: px.x }, y: { value: px.y } },
  });
  return [
    {
      data: { values: [at(low, low), at(high, high)] },
      mark: { type: "line", color: palette.grey, strokeDash: [5, 4], strokeWidth: 1.5 },
      encoding: { x, y },
    },
    {
      data: { values: pairs.map(({ horseId, frontIndex, hindIndex }) => ({ horseId, frontIndex, hindIndex })) },
      mark: { type: "point", filled: true, opacity: 0.75, size: 60 },
      encoding: {
        x,
        y,
        shape: { condition: { test: "datum.hindIndex > datum.frontIndex", value: "triangle-up" }, value: "circle" },
        color: { condition: { test: "datum.hindIndex > datum.frontIndex", value: palette.vermillion }, value: palette.blue },
        tooltip: [
          { field: "horseId", type: "nominal", title: "Horse" },
          { field: "frontIndex", type: "quantitative", title: "Front: width / length", format: ".3f" },
          { field: "hindIndex", type: "quantitative", title: "Hind: width / length", format: ".3f" },
        ],
      },
    },
    ...(medians === null ? [] : [medianLayer(medians, x, y)]),
    word("● front feet rounder", palette.blue, { x: 392, y: 390, align: "right" }),
    word("▲ hind feet rounder", "#a84a00", { x: 8, y: 12, align: "left" }),
  ];
}

function medianLayer(
  medians: { readonly front: number; readonly hind: number },
  x: unknown,
  y: unknown,
): Record<string, unknown> {
  return {
    data: { values: [{ frontIndex: medians.front, hindIndex: medians.hind }] },
    mark: {
      type: "point",
      shape: "diamond",
      size: 260,
      filled: true,
      color: palette.yellow,
      stroke: palette.black,
      strokeWidth: 2,
      opacity: 1,
    },
    encoding: {
      x,
      y,
      tooltip: [
        { field: "frontIndex", type: "quantitative", title: "Median, front", format: ".3f" },
        { field: "hindIndex", type: "quantitative", title: "Median, hind", format: ".3f" },
      ],
    },
  };
}

interface Counts {
  readonly pairs: number;
  readonly left: number;
  readonly rounderInFront: number;
  readonly rounderBehind: number;
}

function readingOf(counts: Counts, options: FrontHindShapeOptions): string {
  const { pairs, left, rounderInFront, rounderBehind } = counts;
  const index = (value: number) => cellText(value, { digits: 2 });
  const medians =
    options.medians === null
      ? ""
      : ` Median width over length: ${index(options.medians.front)} in front, ${index(options.medians.hind)} behind.`;
  const equal = pairs - rounderInFront - rounderBehind;
  return [
    `Of ${of(pairs)}, ${rounderInFront} had rounder front feet and ${rounderBehind} rounder hind feet`,
    equal === 0 ? "." : `; in ${equal} the two were equal.`,
    medians,
    left === 0 ? "" : ` ${of(left)} had not both pairs measured and ${left === 1 ? "is" : "are"} not drawn.`,
  ].join("");
}

function of(horses: number): string {
  return `${horses} ${horses === 1 ? "horse" : "horses"}`;
}

function tableOf(rows: readonly FrontHindRow[], options: FrontHindShapeOptions): Table {
  return {
    caption: `Width over length of the ground surface (${options.taken})`,
    columns: [
      { name: "horseId", title: "Horse" },
      { name: "frontIndex", title: "Front", digits: 3 },
      { name: "hindIndex", title: "Hind", digits: 3 },
    ],
    rows: rows.map(({ horseId, frontIndex, hindIndex }) => ({ horseId, frontIndex, hindIndex })),
  };
}
