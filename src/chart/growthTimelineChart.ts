import type { Chart } from "./Chart.js";
import { chartOf } from "./parts/chartOf.js";
import { emptyChart } from "./parts/emptyChart.js";
import { palette } from "./parts/palette.js";
import type { Table } from "./Table.js";

/** One mark on the wall that was followed; days as `YYYY-MM-DD`. */
export interface GrowthTimelineRow {
  /** `near fore`. */
  readonly foot: string;
  readonly kind: "ring" | "abscess track";
  readonly sightings: readonly { readonly visitDate: string; readonly belowCoronetMm: number }[];
  readonly beganEarliest: string;
  readonly beganLatest: string;
  /** Wall from hairline to ground at the toe; null when it was not measured, then the mark has no end. */
  readonly toeLengthMm: number | null;
  readonly groundEarliest: string | null;
  readonly groundLatest: string | null;
}

export interface GrowthTimelineOptions {
  readonly horseId: string;
  /** Feet from top to bottom; those without a mark are not drawn. */
  readonly feet: readonly string[];
  /** Where the rate comes from: `growth of this horse, 0.24 to 0.27 mm a day`. */
  readonly rate: string;
}

const looks = {
  ring: { shape: "circle", color: palette.blue, words: "Blue circles: rings." },
  "abscess track": { shape: "diamond", color: palette.vermillion, words: "Orange diamonds: abscess tracks." },
} as const;
const width = 560;
const panelPx = 130;

/**
 * Marks on the wall of one horse as they travel down: a panel for each foot, days across, distance below the hairline downwards. Shaded:
 * back to the days on which the mark may have begun, and on to those on which it may be out at the toe.
 */
export function growthTimelineChart(rows: readonly GrowthTimelineRow[], options: GrowthTimelineOptions): Chart {
  const { horseId, feet, rate } = options;
  const title = `Marks travelling down the wall: ${horseId}`;
  const drawn = rows.filter(({ sightings }) => sightings.length > 0);
  const table = tableOf(drawn, horseId);
  if (drawn.length === 0) return emptyChart({ title, why: "No ring or abscess track has been measured.", table });
  const days = drawn
    .flatMap((row) => [row.beganEarliest, ...row.sightings.map(({ visitDate }) => visitDate), lastDay(row)])
    .sort();
  const deepest = Math.max(
    ...drawn.flatMap((row) => [row.toeLengthMm ?? 0, ...row.sightings.map((each) => each.belowCoronetMm)]),
  );
  const kinds = (["ring", "abscess track"] as const).filter((kind) => drawn.some((row) => row.kind === kind));
  const span = { kinds, from: days[0] ?? "", to: days.at(-1) ?? "", deepest: Math.ceil((deepest + 4) / 10) * 10 };
  const shown = feet.filter((foot) => drawn.some((row) => row.foot === foot));
  return chartOf({
    title,
    explained: [
      kinds.map((kind) => looks[kind].words).join(" "),
      `Marks: sightings. Bars: days between which it began at the hairline, and between which it is out at the toe (${rate}).`,
    ],
    reading: drawn.map(sentenceOf).join(" "),
    table,
    widthPx: width + 80,
    body: {
      vconcat: shown.map((foot, place) =>
        panel(
          drawn.filter((row) => row.foot === foot),
          foot,
          span,
          place === shown.length - 1,
        ),
      ),
      spacing: 14,
      resolve: { scale: { color: "shared", shape: "shared" } },
    },
  });
}

interface Span {
  readonly kinds: readonly GrowthTimelineRow["kind"][];
  readonly from: string;
  readonly to: string;
  readonly deepest: number;
}

function panel(rows: readonly GrowthTimelineRow[], foot: string, span: Span, last: boolean): object {
  const { kinds } = span;
  const x = {
    field: "day",
    type: "temporal",
    scale: { type: "utc", domain: [span.from, span.to], nice: "month" },
    axis: {
      title: last ? "Day" : null,
      labels: last,
      ticks: last,
      grid: true,
      format: "%b %Y",
      labelOverlap: true,
      labelFlush: true,
    },
  };
  const y = {
    field: "below",
    type: "quantitative",
    scale: { domain: [0, span.deepest], reverse: true, nice: false },
    axis: { title: "mm below hairline", tickCount: 4, grid: true },
  };
  const scale = { domain: kinds, range: kinds.map((kind) => looks[kind].color) };
  const shapes = { domain: kinds, range: kinds.map((kind) => looks[kind].shape) };
  const color = { field: "kind", type: "nominal", scale, legend: null };
  const detail = { field: "mark", type: "nominal" };
  const numbered = rows.map((row, mark) => ({ ...row, mark }));
  const wedges = numbered.flatMap(wedgesOf);
  const sightings = numbered.flatMap(({ mark, kind, sightings: seen }) =>
    seen.map(({ visitDate, belowCoronetMm }) => ({ mark, kind, day: visitDate, below: belowCoronetMm })),
  );
  return {
    title: { text: foot, fontSize: 13, fontWeight: 600, anchor: "start", offset: 4 },
    width,
    height: panelPx,
    layer: [
      {
        data: { values: wedges },
        mark: { type: "line", filled: true, opacity: 0.22, strokeWidth: 0 },
        encoding: {
          x,
          y,
          fill: color,
          detail: { field: "wedge", type: "nominal" },
          order: { field: "order", type: "quantitative" },
        },
      },
      {
        data: { values: numbered.flatMap(intervalsOf) },
        mark: { type: "line", strokeWidth: 6, strokeCap: "butt", opacity: 0.8 },
        encoding: { x, y, color, detail: { field: "interval", type: "nominal" } },
      },
      {
        data: { values: sightings },
        mark: { type: "line", strokeWidth: 2 },
        encoding: { x, y, color, detail },
      },
      {
        data: { values: sightings },
        mark: { type: "point", filled: true, size: 60, opacity: 1 },
        encoding: {
          ...{ x, y, color },
          shape: { field: "kind", type: "nominal", scale: shapes, legend: null },
          tooltip: [
            { field: "kind", type: "nominal", title: "Mark" },
            { field: "day", type: "temporal", title: "Seen", format: "%Y-%m-%d" },
            { field: "below", type: "quantitative", title: "mm below the hairline" },
          ],
        },
      },
    ],
  };
}

/** Days between which it began, at the hairline, and between which it is out, at the ground. */
function intervalsOf(row: GrowthTimelineRow & { readonly mark: number }): object[] {
  const { kind, mark, beganEarliest, beganLatest, toeLengthMm, groundEarliest, groundLatest } = row;
  const bar = (name: string, below: number, days: readonly string[]) =>
    days.map((day) => ({ kind, day, below, interval: `${mark} ${name}` }));
  const began = bar("began", 0, [beganEarliest, beganLatest]);
  if (toeLengthMm === null || groundEarliest === null || groundLatest === null) return began;
  return [...began, ...bar("out", toeLengthMm, [groundEarliest, groundLatest])];
}

/** Triangles from the last sighting back to the hairline and on to the ground. */
function wedgesOf(row: GrowthTimelineRow & { readonly mark: number }): object[] {
  const seen = row.sightings.at(-1);
  if (seen === undefined) return [];
  const tip = { day: seen.visitDate, below: seen.belowCoronetMm };
  const corners = (name: string, places: readonly { readonly day: string; readonly below: number }[]) =>
    places.map((place, order) => ({ ...place, order, kind: row.kind, wedge: `${row.mark} ${name}` }));
  const back = corners("back", [tip, { day: row.beganEarliest, below: 0 }, { day: row.beganLatest, below: 0 }, tip]);
  const { toeLengthMm, groundEarliest, groundLatest } = row;
  if (toeLengthMm === null || groundEarliest === null || groundLatest === null) return back;
  const ground = [
    { day: groundEarliest, below: toeLengthMm },
    { day: groundLatest, below: toeLengthMm },
  ];
  return [...back, ...corners("on", [tip, ...ground, tip])];
}

function lastDay(row: GrowthTimelineRow): string {
  return row.groundLatest ?? row.sightings.at(-1)?.visitDate ?? row.beganLatest;
}

function sentenceOf(row: GrowthTimelineRow): string {
  const { foot, kind, sightings, beganEarliest, beganLatest, groundEarliest, groundLatest } = row;
  const seen = sightings.at(-1);
  const end =
    groundEarliest === null || groundLatest === null ? "" : `, out at the toe between ${groundEarliest} and ${groundLatest}`;
  return `${foot.slice(0, 1).toUpperCase()}${foot.slice(1)}, ${kind}: ${seen?.belowCoronetMm ?? 0} mm below the hairline on ${seen?.visitDate ?? ""}, began between ${beganEarliest} and ${beganLatest}${end}.`;
}

function tableOf(rows: readonly GrowthTimelineRow[], horseId: string): Table {
  return {
    caption: `Sightings of marks on the wall of ${horseId}`,
    columns: [
      { name: "foot", title: "Foot" },
      { name: "kind", title: "Mark" },
      { name: "day", title: "Seen" },
      { name: "below", title: "mm below the hairline" },
    ],
    rows: rows.flatMap(({ foot, kind, sightings }) =>
      sightings.map(({ visitDate, belowCoronetMm }) => ({ foot, kind, day: visitDate, below: belowCoronetMm })),
    ),
  };
}
