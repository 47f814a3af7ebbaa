/** Name of a rain column: `rainMm14d` is the total of 14 days, `apiMm` the antecedent precipitation index. */
export type RainColumn = `rainMm${number}d` | "apiMm";

/**
 * Why a rain column is missing.
 * - `no_stay`: no stay of the horse covers the day of the visit.
 * - `no_yard`: the stay names no yard, or one that is not described.
 * - `no_gauge`: the yard names no gauge.
 * - `no_readings`: the gauge has no rows.
 * - `outside_readings`: the last admissible day lies before the first or after the last row of the gauge.
 * - `accumulated`: a total of several days lies in the window.
 * - `days_missing`: a day of the window has no reading.
 * - `warm_up`: too few unbroken days of readings for the index.
 */
export type MissingRainCode =
  "no_stay" | "no_yard" | "no_gauge" | "no_readings" | "outside_readings" | "accumulated" | "days_missing" | "warm_up";

/** Why a rain column is missing, for counting and for reading. */
export interface MissingRain {
  readonly code: MissingRainCode;
  /** In plain words, with the numbers. */
  readonly text: string;
}

/** Rain before one visit to one horse. */
export interface RainBeforeVisit {
  readonly horseId: string;
  readonly visitDate: string;
  /** Yard of the horse on that day; null when it is not known. */
  readonly yardId: string | null;
  /** Gauge that stands for the yard; null when there is none. */
  readonly gaugeId: string | null;
  /** Date of the last reading that was used. */
  readonly lastRainDay: string;
  /** Rain of the days up to `lastRainDay`, mm; one column for each window of the settings, such as `rainMm14d`. */
  readonly [window: `rainMm${number}d`]: number | null;
  /** Antecedent precipitation index on `lastRainDay`, mm. */
  readonly apiMm: number | null;
  /** The reason for each rain column that is null. */
  readonly missing: Readonly<Partial<Record<RainColumn, MissingRain>>>;
}
