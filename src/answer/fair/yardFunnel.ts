import { type FunnelCurvePoint, funnelChart, type FunnelRow } from "../../chart/funnelChart.js";
import type { Chart } from "../../chart/Chart.js";
import type { FootCase } from "../../derive/FootCase.js";
import { funnelLimits } from "../../estimate/funnelLimits.js";
import { grouped } from "../../study/grouped.js";
import type { Settings } from "../../study/Settings.js";
import { caseWords } from "../caseWords.js";

const OUTER = 0.998;

/**
 * Funnel of yards: horses with thrush in any graded foot at their last visit, one look a horse, so that horses may count as independent
 * of each other within the limits.
 *
 * @private
 */
export function yardFunnel(lastLooks: readonly FootCase[], settings: Settings): Chart {
  const { level, minimumHorses } = settings;
  const graded = lastLooks.filter(({ thrush, yardId }) => thrush !== null && yardId !== null);
  const yards = [...grouped(graded, ({ yardId }) => yardId ?? "")].sort(([a], [b]) => (a < b ? -1 : 1));
  const counts = yards.map(([group, rows]) => {
    const horses = [...grouped(rows, ({ horseId }) => horseId).values()];
    return { group, n: horses.length, cases: horses.filter((feet) => feet.some(({ thrush }) => thrush)).length };
  });
  const all = counts.reduce((sum, { n }) => sum + n, 0);
  const target = all === 0 ? 0 : counts.reduce((sum, { cases }) => sum + cases, 0) / all;
  const most = counts.reduce((high, { n }) => Math.max(high, n), 0);
  const rows = counts.map(({ group, n, cases }): FunnelRow => ({
    ...{ group, cases, estimate: cases / n, tooFew: n < minimumHorses },
    ...limitsAt(target, n, level),
  }));
  return funnelChart(
    rows,
    Array.from({ length: most }, (_, i) => limitsAt(target, i + 1, level)),
    {
      target,
      levels: [level, Math.max(level, OUTER)],
      unit: "horses",
      groups: "yards",
      finding: "thrush at the last visit",
      caseDefinition: caseWords(settings),
      tooFewReason: `fewer than ${minimumHorses} horses`,
    },
  );
}

function limitsAt(target: number, n: number, level: number): FunnelCurvePoint {
  const inner = funnelLimits(target, n, { level });
  const outer = funnelLimits(target, n, { level: Math.max(level, OUTER) });
  return { n, innerLower: inner.lower, innerUpper: inner.upper, outerLower: outer.lower, outerUpper: outer.upper };
}
