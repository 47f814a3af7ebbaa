/** What the simulated district is made with. Effects are log odds of thrush (grade 1 or more) at one foot; all values are invented. */
export interface PlantedEffects {
  /** Log odds of a fore foot in a dry, dewless fortnight at the mean of the year, average yard and horse. */
  readonly intercept: number;
  /** For each 10 mm of rain in the 14 days up to the visit. */
  readonly rainPer10Mm14d: number;
  /** For each night of the last 14 on which the air cooled to its dew point. */
  readonly perDewNight14d: number;
  /** Height of the yearly wave beside rain and dew; it peaks on 15 January. */
  readonly seasonAmplitude: number;
  /** Hind foot against fore foot. */
  readonly hind: number;
  /** Frog or wall dressed in the seven days before. Worse feet are dressed more often. */
  readonly surfaceTreated: number;
  /** The yard that changed its bedding, from the day of the change on. */
  readonly beddingChange: number;
  /** Second observer against the first: the same foot, a more severe eye. */
  readonly secondObserver: number;
  /** Spread of the yards. */
  readonly yardSd: number;
  /** Spread of the horses within a yard. */
  readonly horseSd: number;
  /** Spread of the feet within a horse. */
  readonly footSd: number;
  /** Distance on the same scale from grade 1 to 2, and from grade 1 to 3. */
  readonly gradeSteps: readonly [number, number];
  /** Mean days over the agreed interval, in most yards and in the two that run late. */
  readonly delayDays: number;
  readonly lateYardDelayDays: number;
  /** A visit with grade 2 or more shortens the next agreed interval by this many days. */
  readonly shorterAfterGrade2Days: number;
}

/** The effects behind `data-demo/`. */
export const plantedEffects: PlantedEffects = {
  intercept: -3,
  rainPer10Mm14d: 0.15,
  perDewNight14d: 0.08,
  seasonAmplitude: 0.35,
  hind: 0.55,
  surfaceTreated: -0.3,
  beddingChange: -0.8,
  secondObserver: 0.3,
  yardSd: 0.45,
  horseSd: 0.9,
  footSd: 0.3,
  gradeSteps: [1.5, 3.2],
  delayDays: 1,
  lateYardDelayDays: 11,
  shorterAfterGrade2Days: 14,
};
