import type { SeasonDesign } from "../SeasonDesign.js";

/** The district of the planted-truth page: season by itself raises the odds in the wet half of the year, with or without an effect of rain. */
export function plantedDesign(rainPer10Mm14d: number): SeasonDesign {
  return {
    yards: 24,
    horsesPerYard: 2,
    from: "2023-01-10",
    to: "2024-12-20",
    visitGapDays: 70,
    truth: { intercept: -2, rainPer10Mm14d, seasonAmplitude: 0.8, hind: 0.4, yardSd: 0.5, horseSd: 0.7 },
  };
}
