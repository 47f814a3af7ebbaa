import type { SurvivalLine } from "../chart/survivalChart.js";
import { kaplanMeier } from "../estimate/kaplanMeier.js";
import { survivalAt } from "../estimate/survivalAt.js";

/** The line is drawn as long as so many are still watched; beyond that one more event would make it jump. @private */
const leastWatched = 10;

/** The Kaplan-Meier curve of rows that are complete, ready to be drawn, with readings at the times given. */
export function survivalLine(
  name: string,
  rows: readonly { readonly time: number; readonly event: boolean }[],
  options: { readonly level: number; readonly readAt: readonly number[] },
): SurvivalLine {
  const curve = kaplanMeier(rows, { level: options.level });
  const longestFirst = rows.map(({ time }) => time).sort((a, b) => b - a);
  const longest = longestFirst[Math.min(leastWatched, rows.length) - 1] ?? 0;
  return {
    name,
    n: rows.length,
    longest,
    steps: curve.steps.filter(({ time }) => time <= longest),
    readings: options.readAt.flatMap((time) => survivalAt(curve, rows, time) ?? []),
  };
}
