/**
 * Which 24 hours a dated rain reading covers. There is no world-wide rule, so a study must say it.
 * - `ends_on_date`: read in the morning of the date, covers the 24 hours before.
 * - `starts_on_date`: read in the morning after and thrown back, covers the 24 hours from the morning of the date.
 * - `calendar_day`: midnight to midnight.
 */
export type GaugeDayRule = "ends_on_date" | "starts_on_date" | "calendar_day";

/** What an effect of the climate study can be held equal for. */
export type AdjustmentCode =
  "season" | "season_2" | "end" | "observer" | "shod" | "interval" | "ground" | "bedding" | "turnout" | "surface_treated";

/** Choices an analysis rests on. All of them are printed with the results; `defaultSettings` holds the usual values. */
export interface Settings {
  /** Lowest thrush grade that counts as a case. Results under different case definitions are never compared. */
  readonly caseGrade: 1 | 2 | 3;
  /** Confidence level of every interval, between 0 and 1. */
  readonly level: number;
  readonly gaugeDay: GaugeDayRule;
  /** Rain totals are taken over these many days up to the visit. */
  readonly rainWindowsDays: readonly number[];
  /** Daily decay of the antecedent precipitation index, between 0 and 1. */
  readonly apiDecayPerDay: number;
  /** Days of unbroken readings the index needs before a visit; see `antecedentPrecipitation`. */
  readonly apiWarmUpDays: number;
  /**
   * Daily rain above this, mm, is doubted with a warning and kept: a little above the greatest rain day known near the gauges. null: only the limits that
   * hold anywhere are used.
   */
  readonly dailyRainLimitMm: number | null;
  /** The declared exposure of the climate study: a column of `exposureBeforeVisits`, such as `rainMm14d`. All others are exploratory. */
  readonly primaryExposure: string;
  /** Its effect is given for this many units: 10 for 10 mm. */
  readonly exposurePer: number;
  /** What its effect is held equal for. `season`: one yearly wave; `season_2`: two; `end`: fore or hind; the others as recorded. */
  readonly adjustFor: readonly AdjustmentCode[];
  /** Days early or late within which a visit counts as kept. Two-sided. */
  readonly toleranceDays: number;
  /** A routine gap longer than this is loss to follow-up, not lateness. */
  readonly lostAfterDays: number;
  /** Groups with fewer horses than this get no estimate of their own. */
  readonly minimumHorses: number;
  /** Frog width over frog length below this counts as contracted; published cut-offs conflict. */
  readonly contractedFrogIndex: number;
  /** Toe angle minus heel angle at or above this counts as underrun, degrees. */
  readonly underrunGapDeg: number;
  /** Left-right difference in toe angle above this counts as an uneven pair, degrees. */
  readonly unevenPairDeg: number;
  /** Date the review is made for, `YYYY-MM-DD`; null takes the day of the last visit. */
  readonly asOf: string | null;
}
