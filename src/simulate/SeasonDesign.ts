import type { RainReading } from "../derive/dailyRain.js";

/** A district to simulate, with its truth: yards under shared weather, visited all year round, where season and rain go together. */
export interface SeasonDesign {
  readonly yards: number;
  /** On average; all horses together are shared out over the yards as evenly as can be. */
  readonly horsesPerYard: number;
  /** First and last day of the visits, `YYYY-MM-DD`. */
  readonly from: string;
  readonly to: string;
  /** Days from one visit to a yard to the next, on average; single gaps differ by up to a fourth. */
  readonly visitGapDays: number;
  /** Rain gauges; the yards are shared out over them in turn. 4 when left out. Not used with `weather`. */
  readonly gauges?: number;
  /**
   * Daily rain to use instead of simulated rain: every day from 41 days before the first visit to the last, dated by the day on which a reading
   * ends, for one gauge or several.
   */
  readonly weather?: readonly (RainReading & { readonly gaugeId: string })[];
  /** Share of the feet that nobody looked at, by chance alone; 0 when left out. */
  readonly unseenShare?: number;
  readonly truth: SeasonTruth;
}

/** What decides the log odds of thrush at one foot. */
export interface SeasonTruth {
  /** Fore foot of a typical horse of a typical yard after a dry fortnight, at the mean of the year. */
  readonly intercept: number;
  /** Added for each 10 mm of rain in the 14 days up to the visit. */
  readonly rainPer10Mm14d: number;
  /** Height of a yearly wave that has nothing to do with rain and peaks on 15 January, as rain does. */
  readonly seasonAmplitude: number;
  /** Added in a hind foot. */
  readonly hind: number;
  /** Standard deviation between yards that are alike in all of this. */
  readonly yardSd: number;
  /** Standard deviation between horses of a yard. */
  readonly horseSd: number;
  /** Standard deviation of what all feet seen at one visit to a yard share beside the rain; 0 when left out. */
  readonly visitSd?: number;
  /** Standard deviation of what all yards of the district share for 28 days beside the rain; 0 when left out. */
  readonly districtSd?: number;
}
