import type { Chart } from "./Chart.js";
import { chartOf } from "./parts/chartOf.js";
import { emptyChart } from "./parts/emptyChart.js";
import { palette } from "./parts/palette.js";
import type { Table } from "./Table.js";

interface Place {
  readonly x: number;
  readonly y: number;
}

/** Mean outline of the feet of one end: places in order round the foot, the middle of the heels at 0, 0 and the toe near 0, 1. */
export interface MeanOutlineRow {
  readonly end: "fore" | "hind";
  readonly horses: number;
  readonly outlines: number;
  readonly mean: readonly Place[];
  /** The band of spread lies between these two. */
  readonly inner: readonly Place[];
  readonly outer: readonly Place[];
}

export interface MeanOutlinesOptions {
  /** The finding; a plain title when left out. */
  readonly title?: string;
  /** What the outlines are of, and what the band is: `before trimming; band: two standard deviations between horses`. */
  readonly taken: string;
}

const looks = {
  fore: { words: "Front feet", color: palette.blue, dash: [1, 0], fill: 0.3 },
  hind: { words: "Hind feet", color: palette.vermillion, dash: [7, 4], fill: 0.3 },
} as const;
const pxPerLength = 330;

/** Mean outlines of front and hind feet laid over each other at one size, each with its band; ground surface, toe up, outer side right. */
export function meanOutlinesChart(rows: readonly MeanOutlineRow[], options: MeanOutlinesOptions): Chart {
  const title = options.title ?? "Mean outline of front and hind feet";
  const table = tableOf(rows);
  if (rows.length === 0) return emptyChart({ title, why: "No outline of a foot of known side can be used.", table });
  const places = rows.flatMap(({ inner, outer, mean }) => [...inner, ...outer, ...mean]);
  const side = Math.max(...places.map(({ x }) => Math.abs(x))) + 0.08;
  const [low, high] = [Math.min(...places.map(({ y }) => y)) - 0.06, Math.max(...places.map(({ y }) => y)) + 0.06];
  const width = Math.round(2 * side * pxPerLength);
  const x = { field: "x", type: "quantitative", scale: { domain: [-side, side], nice: false }, axis: null };
  const y = { field: "y", type: "quantitative", scale: { domain: [low, high], nice: false }, axis: null };
  // Within the outline, which nothing else crosses there.
  const inside = 0.15 * pxPerLength;
  const order = { field: "order", type: "quantitative" };
  const layer = [
    ...rows.map((row) => ({
      data: { values: ordered([...closed(row.outer), ...closed(row.inner).reverse()]) },
      mark: { type: "line", filled: true, color: looks[row.end].color, opacity: looks[row.end].fill, strokeWidth: 0 },
      encoding: { x, y, order, tooltip: saidOf(row, "band") },
    })),
    axisLine(low, 0.1, x, y),
    axisLine(0.7, high, x, y),
    ...rows.map((row) => ({
      data: { values: ordered(closed(row.mean)) },
      mark: { type: "line", color: looks[row.end].color, strokeWidth: 2, strokeDash: looks[row.end].dash },
      encoding: { x, y, order, tooltip: saidOf(row, "mean") },
    })),
    ...rows.map((row, place) => legendLine(row, place, width)),
    word("toe", width / 2 + 8, 8, "left"),
    word("outer side", width - inside, pxPerLength * 0.62, "right"),
    word("inner side", inside, pxPerLength * 0.62, "left"),
  ];
  return chartOf({
    title,
    explained: [`Ground surface, left feet mirrored to lie as right ones, all at one size. ${options.taken}.`],
    reading: readingOf(rows),
    table,
    widthPx: width,
    body: {
      width,
      height: Math.round((high - low) * pxPerLength),
      layer: [...layer],
      resolve: { scale: { x: "shared", y: "shared" } },
    },
  });
}

function saidOf(row: MeanOutlineRow, part: string): object {
  return { value: `${looks[row.end].words}, ${part}: ${counted(row.outlines, "outline")} of ${counted(row.horses, "horse")}` };
}

/** A piece of the axis from the middle of the heels to the toe; the words stand in between. */
function axisLine(from: number, to: number, x: object, y: object): object {
  const values = [from, to].map((at) => ({ x: 0, y: at }));
  return {
    data: { values },
    mark: { type: "line", color: palette.grey, strokeWidth: 1, strokeDash: [2, 4] },
    encoding: { x, y },
  };
}

function ordered(places: readonly Place[]): object[] {
  return places.map(({ x, y }, order) => ({ x: rounded(x), y: rounded(y), order }));
}

/** A tenth of a pixel and less; adding 0 makes -0 a 0. */
function rounded(value: number): number {
  return Math.round(value * 1e4) / 1e4 + 0;
}

function closed(places: readonly Place[]): Place[] {
  return [...places, ...places.slice(0, 1)];
}

function word(text: string, x: number, y: number, align: string): object {
  return {
    data: { values: [{}] },
    mark: { type: "text", text, align, color: palette.quietInk, fontSize: 13, fontStyle: "italic" },
    encoding: { x: { value: x }, y: { value: y } },
  };
}

/** A stroke and its words in the middle of the foot, where nothing else is drawn. */
function legendLine(row: MeanOutlineRow, place: number, width: number): object {
  const { words, color, dash } = looks[row.end];
  const at = pxPerLength * 0.42 + place * 24;
  const left = width / 2 - 82;
  return {
    data: { values: [{}] },
    layer: [
      {
        mark: { type: "rule", color, strokeWidth: 2.5, strokeDash: dash },
        encoding: { x: { value: left }, x2: { value: left + 32 }, y: { value: at } },
      },
      {
        mark: {
          type: "text",
          text: `${words}, ${counted(row.horses, "horse")}`,
          ...{ align: "left", fontSize: 13, color: palette.ink, fontWeight: 600 },
        },
        encoding: { x: { value: left + 40 }, y: { value: at } },
      },
    ],
  };
}

function widthOf({ mean }: MeanOutlineRow): number {
  const across = mean.map(({ x }) => x);
  return Math.max(...across) - Math.min(...across);
}

function readingOf(rows: readonly MeanOutlineRow[]): string {
  const ends = rows.map(
    (row) =>
      `${looks[row.end].words}: mean of ${counted(row.outlines, "outline")} of ${counted(row.horses, "horse")}, ${widthOf(row).toFixed(2)} wide where the common mean is 1 long.`,
  );
  return ends.join(" ");
}

function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? "" : "s"}`;
}

function tableOf(rows: readonly MeanOutlineRow[]): Table {
  return {
    caption: "Mean outlines, in lengths of the common mean from heels to toe",
    columns: [
      { name: "end", title: "Feet" },
      { name: "horses", title: "Horses" },
      { name: "outlines", title: "Outlines" },
      { name: "width", title: "Greatest width", digits: 2 },
      { name: "length", title: "Toe above the heels", digits: 2 },
    ],
    rows: rows.map((row) => ({
      end: row.end === "fore" ? "front" : "hind",
      ...{ horses: row.horses, outlines: row.outlines, width: widthOf(row) },
      length: Math.max(...row.mean.map(({ y }) => y)),
    })),
  };
}
