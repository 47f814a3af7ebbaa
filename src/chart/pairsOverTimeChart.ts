import type { Chart } from "./Chart.js";
import { cellText } from "./cellText.js";
import { chartOf } from "./parts/chartOf.js";
import { emptyChart } from "./parts/emptyChart.js";
import { palette } from "./parts/palette.js";
import type { Table } from "./Table.js";

/** One pair of feet over time; days as `YYYY-MM-DD`, in order. */
export interface PairOverTimeRow {
  /** `Bess, fore pair`. */
  readonly name: string;
  readonly readings: readonly {
    readonly visitDate: string;
    /** Left minus right. */
    readonly differenceDeg: number;
  }[];
}

export interface PairsOverTimeOptions {
  readonly title: string;
  /** Above this size a pair counts as uneven. */
  readonly unevenPairDeg: number;
  /** At which stage: `before trimming`. */
  readonly taken: string;
}

const panel = { width: 250, height: 110, columns: 2 } as const;

/** Left less right toe angle of pairs over time: a panel for each pair, all on one scale, with the band within which a pair counts as even. */
export function pairsOverTimeChart(rows: readonly PairOverTimeRow[], options: PairsOverTimeOptions): Chart {
  const { title, unevenPairDeg, taken } = options;
  const drawn = rows.filter(({ readings }) => readings.length > 0);
  const table = tableOf(drawn, options);
  if (drawn.length === 0) return emptyChart({ title, why: "No pair of feet has both toe angles.", table });
  const readings = drawn.flatMap((row) => row.readings);
  const days = readings.map(({ visitDate }) => visitDate).sort();
  const reach = Math.ceil(Math.max(unevenPairDeg, ...readings.map(({ differenceDeg }) => Math.abs(differenceDeg))) + 1);
  const x = {
    field: "visitDate",
    type: "temporal",
    scale: { type: "utc", domain: [days[0], days.at(-1)], nice: "month" },
    axis: { title: "Day", format: "%b %Y", tickCount: 4, labelOverlap: true, labelSeparation: 10, labelFlush: true, grid: false },
  };
  const y = {
    field: "differenceDeg",
    type: "quantitative",
    scale: { domain: [-reach, reach], nice: false },
    axis: { title: "Left − right, degrees", tickCount: 5, grid: true },
  };
  return chartOf({
    title,
    explained: [
      `Toe angle left less right, ${taken}. Above 0 the left foot is the steeper one. Grey band: within ${unevenPairDeg} degrees.`,
    ],
    reading: drawn.map(sentenceOf).join(" "),
    table,
    widthPx: panel.columns * (panel.width + 60),
    body: {
      columns: panel.columns,
      spacing: 24,
      concat: drawn.map(({ name, readings: own }) => ({
        title: { text: name, fontSize: 13, fontWeight: 600, anchor: "start", offset: 4 },
        width: panel.width,
        height: panel.height,
        layer: [
          {
            data: { values: [{ from: -unevenPairDeg, to: unevenPairDeg }] },
            mark: { type: "rect", color: palette.paleGrey, opacity: 0.45 },
            encoding: { y: { ...y, field: "from" }, y2: { field: "to" } },
          },
          {
            data: { values: [{ differenceDeg: 0 }] },
            mark: { type: "rule", color: palette.grey, strokeWidth: 1 },
            encoding: { y },
          },
          {
            data: { values: own.map((reading) => ({ ...reading })) },
            mark: { type: "line", color: palette.blue, strokeWidth: 2, point: { size: 40, filled: true, color: palette.blue } },
            encoding: {
              ...{ x, y },
              tooltip: [
                { field: "visitDate", type: "temporal", title: "Day", format: "%Y-%m-%d" },
                { field: "differenceDeg", type: "quantitative", title: "Left − right, degrees", format: ".1f" },
              ],
            },
          },
        ],
      })),
    },
  });
}

function degrees(value: number): string {
  return cellText(value, { digits: 1 });
}

function sentenceOf({ name, readings }: PairOverTimeRow): string {
  const [first, last] = [readings[0], readings.at(-1)];
  if (first === undefined || last === undefined) return "";
  return `${name}: ${degrees(first.differenceDeg)} degrees on ${first.visitDate}, ${degrees(last.differenceDeg)} on ${last.visitDate}.`;
}

function tableOf(rows: readonly PairOverTimeRow[], { taken }: PairsOverTimeOptions): Table {
  return {
    caption: `Toe angle left less right, ${taken}`,
    columns: [
      { name: "name", title: "Pair" },
      { name: "day", title: "Day" },
      { name: "difference", title: "Left − right, degrees", digits: 1 },
    ],
    rows: rows.flatMap(({ name, readings }) =>
      readings.map(({ visitDate, differenceDeg }) => ({ name, day: visitDate, difference: differenceDeg })),
    ),
  };
}
