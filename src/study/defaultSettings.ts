import type { Settings } from "./Settings.js";

/**
 * The usual choices; `study.json` may set any of them. Sources:
 * contracted frog below 0.67 and underrun from 5 degrees (Turner, objective assessment of hoof balance; other authors put the
 * healthy frog at 0.50-0.60 or at 0.70 and more); uneven pair above 5 degrees (Turner, from memory; 1.5 degrees in Hobbs 2018, as
 * reported); decay 0.90 a day (published range 0.80-0.98); the rest is common practice, no source.
 */
export const defaultSettings: Settings = {
  caseGrade: 1,
  level: 0.95,
  gaugeDay: "ends_on_date",
  rainWindowsDays: [7, 14, 28],
  apiDecayPerDay: 0.9,
  apiWarmUpDays: 60,
  dailyRainLimitMm: null,
  primaryExposure: "rainMm14d",
  exposurePer: 10,
  adjustFor: ["season", "end", "observer"],
  toleranceDays: 7,
  lostAfterDays: 400,
  minimumHorses: 5,
  contractedFrogIndex: 0.67,
  underrunGapDeg: 5,
  unevenPairDeg: 5,
  asOf: null,
};
