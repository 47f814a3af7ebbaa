import type { Chart } from "./Chart.js";
import { cellText } from "./cellText.js";
import { chartOf } from "./parts/chartOf.js";
import { capital } from "./parts/capital.js";
import { emptyChart } from "./parts/emptyChart.js";
import { palette } from "./parts/palette.js";
import type { Table } from "./Table.js";

/** What was left after one step, and why something was lost at it. */
export interface FlowStep {
  readonly step: string;
  /** Left after the step. */
  readonly left: number;
  /** Lost at the step. */
  readonly lost: number;
  /** Why: empty when nothing was lost. */
  readonly why: string;
}

const widthPx = 320;

/** From rows read to rows used: one bar a step with what was left, and in words what was lost and why. */
export function recordFlowChart(steps: readonly FlowStep[], options: { readonly title: string; readonly unit: string }): Chart {
  const { title, unit } = options;
  const table: Table = {
    caption: title,
    columns: [
      { name: "step", title: "Step" },
      { name: "left", title: `Left (${unit})` },
      { name: "lost", title: "Lost" },
      { name: "why", title: "Why" },
    ],
    rows: steps.map((row) => ({ ...row })),
  };
  const [first, last] = [steps[0], steps.at(-1)];
  if (first === undefined || last === undefined || first.left === 0)
    return emptyChart({ title, why: "Nothing was read.", table });
  const y = {
    field: "step",
    type: "nominal",
    sort: null,
    title: "Step",
    axis: {
      domain: false,
      ticks: false,
      labelPadding: 8,
      labelLimit: 260,
      titleAngle: 0,
      titleAlign: "right",
      titleBaseline: "bottom",
      titleX: -8,
      titleY: -6,
    },
  };
  const number = (value: number) => cellText(value, { digits: 0 });
  const note = (step: FlowStep) => `${number(step.left)}${step.lost > 0 ? `  (−${number(step.lost)}: ${step.why})` : ""}`;
  return chartOf({
    title,
    explained: [`Bars: ${unit} left after each step; in brackets what was lost and why.`],
    reading: `${capital(unit)}: ${first.left} read, ${last.left} used.`,
    table,
    widthPx: widthPx + 420,
    body: {
      width: widthPx,
      height: { step: 30 },
      data: { values: steps.map((step) => ({ ...step, note: note(step) })) },
      layer: [
        {
          mark: { type: "bar", color: palette.skyBlue, stroke: palette.quietInk, strokeWidth: 0.8, height: { band: 0.7 } },
          encoding: {
            y,
            x: { field: "left", type: "quantitative", title: capital(unit), axis: { grid: false, tickCount: 4 } },
            tooltip: [
              { field: "step", type: "nominal", title: "Step" },
              { field: "note", type: "nominal", title: `Left (${unit})` },
            ],
          },
        },
        {
          mark: { type: "text", align: "left", fontSize: 12, color: palette.ink },
          encoding: { y, x: { value: widthPx + 8 }, text: { field: "note", type: "nominal" } },
        },
      ],
    },
  });
}
