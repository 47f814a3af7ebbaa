import { grouped } from "../study/grouped.js";
import type { Chart } from "./Chart.js";
import { cellText } from "./cellText.js";
import { capital } from "./parts/capital.js";
import { chartOf } from "./parts/chartOf.js";
import { emptyChart } from "./parts/emptyChart.js";
import { greyedRows } from "./parts/greyedRows.js";
import { palette } from "./parts/palette.js";
import type { Table } from "./Table.js";

/** A group and the limits that a group of its size would lie within, were it like all. */
export interface FunnelRow {
  readonly group: string;
  readonly cases: number;
  readonly n: number;
  readonly estimate: number;
  /** Limits of the inner and the outer level at this `n`. */
  readonly innerLower: number;
  readonly innerUpper: number;
  readonly outerLower: number;
  readonly outerUpper: number;
  /** Too small a group to be judged: drawn grey and hollow, greyed in the table. */
  readonly tooFew?: boolean;
}

/** Limits at one size of group, for the curves. */
export type FunnelCurvePoint = Pick<FunnelRow, "n" | "innerLower" | "innerUpper" | "outerLower" | "outerUpper">;

export interface FunnelOptions {
  /** The finding; without it, the groups outside the outer limits are named. */
  readonly title?: string;
  /** Share of all groups together: the line in the middle. */
  readonly target: number;
  /** Levels of the two pairs of limits. */
  readonly levels: readonly [inner: number, outer: number];
  /** What `n` counts, in the plural: `horses`. */
  readonly unit: string;
  /** What groups are, in the plural: `yards`. */
  readonly groups: string;
  /** The finding, as in `thrush`. */
  readonly finding: string;
  readonly caseDefinition: string;
  /** Why rows with `tooFew` are grey: `fewer than 5 horses`. */
  readonly tooFewReason?: string;
}

const widthPx = 440;
const reach = ["innerLower", "innerUpper", "outerLower", "outerUpper"] as const;

/**
 * Funnel of groups: the share of each against its size, with the limits that chance alone would keep groups of that size within. A group
 * inside the funnel is no better and no worse than the rest as far as can be told.
 */
export function funnelChart(rows: readonly FunnelRow[], curve: readonly FunnelCurvePoint[], options: FunnelOptions): Chart {
  const { finding, unit, groups, target, levels } = options;
  const reason = options.tooFewReason ?? "too few to judge";
  const title = options.title ?? titleOf(rows, options);
  const table = tableOf(rows, options, reason);
  if (rows.length === 0) return emptyChart({ title, why: `No ${groups} have a share with ${finding}.`, table });
  const percent = (value: number) => cellText(value, { percent: true });
  const [inner, outer] = levels;
  return chartOf({
    title,
    explained: [
      `Share of ${unit} with ${finding} (${options.caseDefinition}) against how many there are. Dark line: all ${groups} together, ${percent(target)}. Dashed and dotted: within these ${percent(inner)} and ${cellText(outer, { percent: true, digits: 1 })} of ${groups} that are like all lie by chance.`,
      ...(rows.some(({ tooFew }) => tooFew === true) ? [`Grey, hollow: ${reason}.`] : []),
    ],
    reading: `${capital(finding)} by size: ${rows.map((row) => `${row.group} ${row.cases} of ${row.n} ${unit}, limits ${percent(row.innerLower)} to ${percent(row.innerUpper)}`).join("; ")}.`,
    table,
    widthPx: widthPx + 90,
    body: {
      width: widthPx,
      height: 280,
      layer: [...curves(curve, options), ...points(rows, options)],
    },
  });
}

function curves(curve: readonly FunnelCurvePoint[], { target, unit, finding }: FunnelOptions): Record<string, unknown>[] {
  const x = {
    field: "n",
    type: "quantitative",
    title: capital(unit),
    scale: { zero: true },
    axis: { tickMinStep: 1, grid: false, format: ",d" },
  };
  const y = (field: string) => ({
    field,
    type: "quantitative",
    title: `${capital(unit)} with ${finding}`,
    scale: { domain: [0, 1] },
    axis: { format: "~%", tickCount: 5 },
  });
  const sorted = [...curve].sort((a, b) => a.n - b.n);
  const line = (field: (typeof reach)[number]) => ({
    data: { values: sorted },
    mark: {
      type: "line",
      color: palette.grey,
      strokeWidth: 1.5,
      strokeDash: field.startsWith("inner") ? [6, 4] : [2, 3],
      interpolate: "linear",
    },
    encoding: { x, y: y(field) },
  });
  return [
    ...reach.map(line),
    {
      data: { values: [{ target }] },
      mark: { type: "rule", color: palette.ink, strokeWidth: 1.5 },
      encoding: { y: y("target") },
    },
  ];
}

function points(rows: readonly FunnelRow[], { unit, finding }: FunnelOptions): Record<string, unknown>[] {
  const grey = (then: string, otherwise: string) => ({ condition: { test: "datum.tooFew", value: then }, value: otherwise });
  const values = rows.map((row) => ({ ...row, tooFew: row.tooFew === true }));
  const place = { x: { field: "n", type: "quantitative" }, y: { field: "estimate", type: "quantitative" } };
  return [
    {
      data: { values },
      mark: { type: "point", shape: "circle", size: 70, strokeWidth: 2, opacity: 1 },
      encoding: {
        ...place,
        fill: grey(palette.paper, palette.blue),
        stroke: grey(palette.grey, palette.blue),
        tooltip: [
          { field: "group", type: "nominal", title: "Group" },
          { field: "cases", type: "quantitative", title: `With ${finding}` },
          { field: "n", type: "quantitative", title: capital(unit) },
        ],
      },
    },
    // A band of paper under the letters keeps them legible where a line crosses.
    ...[{ stroke: palette.paper, strokeWidth: 4 }, { color: palette.quietInk }].map((ink) => ({
      data: { values: labels(rows) },
      mark: { type: "text", align: "left", dx: 8, dy: -6, ...ink },
      encoding: { ...place, text: { field: "group", type: "nominal" } },
    })),
  ];
}

/** Names at each place; groups of the same size and share lie on one point. */
function labels(rows: readonly FunnelRow[]) {
  return [...grouped(rows, ({ n, estimate }) => `${n} ${estimate}`).values()].map((at) => ({
    ...at[0],
    group: at.map(({ group }) => group).join(", "),
  }));
}

function outside({ estimate, outerLower, outerUpper }: FunnelRow): boolean {
  return estimate < outerLower || estimate > outerUpper;
}

function titleOf(rows: readonly FunnelRow[], { groups, finding }: FunnelOptions): string {
  const named = rows.filter((row) => row.tooFew !== true && outside(row)).map(({ group }) => group);
  if (named.length === 0) return `No ${groups} stand out from the rest in ${finding} by more than chance`;
  return `Outside what chance allows in ${finding}: ${named.join(", ")}`;
}

function tableOf(rows: readonly FunnelRow[], { groups, unit, finding, levels }: FunnelOptions, reason: string): Table {
  const percent = (level: number) => cellText(level, { percent: true, ...(level > 0.99 ? { digits: 1 } : {}) });
  const [inner, outer] = [percent(levels[0]), percent(levels[1])];
  return {
    caption: `Share of ${unit} with ${finding} by ${groups}, and the limits of chance at that size`,
    columns: [
      { name: "group", title: capital(groups).replace(/s$/, "") },
      { name: "cases", title: `With ${finding}` },
      { name: "n", title: `of ${unit}` },
      { name: "estimate", title: "Share", percent: true },
      { name: "innerLower", title: `${inner} limits, from`, percent: true },
      { name: "innerUpper", title: "to", percent: true },
      { name: "outerLower", title: `${outer} limits, from`, percent: true },
      { name: "outerUpper", title: "to", percent: true },
    ],
    rows: rows.map(({ group, cases, n, estimate, innerLower, innerUpper, outerLower, outerUpper }) => ({
      ...{ group, cases, n, estimate },
      ...{ innerLower, innerUpper, outerLower, outerUpper },
    })),
    greyed: greyedRows(rows, reason),
  };
}
