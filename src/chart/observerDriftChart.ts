import type { Chart } from "./Chart.js";
import { cellText } from "./cellText.js";
import { chartOf } from "./parts/chartOf.js";
import { emptyChart } from "./parts/emptyChart.js";
import { countLayers } from "./parts/countLayers.js";
import { intervalLayers } from "./parts/intervalLayers.js";
import type { Table } from "./Table.js";
import { levelText } from "./parts/levelText.js";

/** Agreement in one quarter. */
export interface DriftRow {
  /** `2024-Q3`. */
  readonly quarter: string;
  readonly estimate: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  /** Feet scored twice. */
  readonly n: number;
}

/** Weighted kappa by quarter of the year, with intervals and the number of feet scored twice. */
export function observerDriftChart(
  rows: readonly DriftRow[],
  options: { readonly title: string; readonly level: number },
): Chart {
  const { title, level } = options;
  const interval = `${levelText(level)} interval`;
  const table: Table = {
    caption: title,
    columns: [
      { name: "quarter", title: "Quarter" },
      { name: "estimate", title: "Weighted kappa", digits: 2 },
      { name: "lower", title: `${interval}, from`, digits: 2 },
      { name: "upper", title: "to", digits: 2 },
      { name: "n", title: "Feet scored twice" },
    ],
    rows: rows.map((row) => ({ ...row })),
  };
  const drawn = rows.filter(({ estimate }) => estimate !== null);
  if (drawn.length === 0) return emptyChart({ title, why: "No quarter has enough feet scored twice.", table });
  const x = {
    field: "quarter",
    type: "ordinal",
    title: "Quarter",
    scale: { domain: rows.map(({ quarter }) => quarter) },
    axis: { labelAngle: 0 },
  };
  const y = { type: "quantitative", title: "Weighted kappa (1: full agreement, 0: chance)", scale: { domainMax: 1 } };
  const tooltip = [
    { field: "quarter", type: "nominal", title: "Quarter" },
    { field: "estimate", type: "quantitative", title: "Kappa", format: ".2f" },
    { field: "n", type: "quantitative", title: "Feet" },
  ];
  return chartOf({
    title,
    explained: [`Kappa with quadratic weights and ${interval} from horses drawn anew; n: feet scored by both.`],
    reading: `${drawn.map(({ quarter, estimate, n }) => `${quarter} ${cellText(estimate, { digits: 2 })} (${n} feet)`).join("; ")}.`,
    table,
    widthPx: Math.max(300, 80 * rows.length),
    body: {
      width: Math.max(220, 70 * rows.length),
      height: 220,
      data: { values: rows.map((row) => ({ ...row })) },
      layer: [...intervalLayers({ x, y, tooltip }), ...countLayers(x)],
    },
  });
}
