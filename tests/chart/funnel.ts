import type { FunnelOptions, FunnelRow } from "../../src/chart/funnelChart.js";
import { funnelLimits } from "../../src/estimate/funnelLimits.js";

export const funnelOptions: FunnelOptions = {
  target: 0.3,
  levels: [0.95, 0.998],
  unit: "horses",
  groups: "yards",
  finding: "thrush",
  caseDefinition: "grade 1 or more",
  tooFewReason: "fewer than 5 horses",
};

const limits = (n: number) => {
  const [inner, outer] = [funnelLimits(0.3, n, { level: 0.95 }), funnelLimits(0.3, n, { level: 0.998 })];
  return { n, innerLower: inner.lower, innerUpper: inner.upper, outerLower: outer.lower, outerUpper: outer.upper };
};

/** Marsh lies above the outer limits, Hill within, Nook is too small to be judged. */
export const funnelRows: readonly FunnelRow[] = [
  { group: "Hill", cases: 5, estimate: 0.25, ...limits(20) },
  { group: "Marsh", cases: 18, estimate: 0.72, ...limits(25) },
  { group: "Nook", cases: 3, estimate: 1, ...limits(3), tooFew: true },
];

export const funnelCurve = Array.from({ length: 30 }, (_, i) => limits(i + 1));
