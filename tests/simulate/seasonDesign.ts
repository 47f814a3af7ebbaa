import type { SeasonDesign } from "../../src/simulate/SeasonDesign.js";

/** Twenty yards for two years; rain raises the odds, and so does winter by itself. */
export const seasonDesign: SeasonDesign = {
  yards: 20,
  horsesPerYard: 4,
  from: "2023-01-10",
  to: "2024-12-20",
  visitGapDays: 56,
  truth: { intercept: -2, rainPer10Mm14d: 0.15, seasonAmplitude: 0.5, hind: 0.4, yardSd: 0.5, horseSd: 0.7 },
};
