import type { MissingRainCode } from "./RainBeforeVisit.js";

/** Name of an exposure column; `14d` is the window in days, `90pct` the share of the index that is left after a day. */
export type ExposureColumn =
  | `rainMm${number}d`
  | `rainAnomalyMm${number}d`
  | `normalYears${number}d`
  | `wetDays${number}d`
  | `dewDays${number}d`
  | `surplusDays${number}d`
  | `apiMm${number}pct`
  | "soilStorageMm";

/**
 * Why an exposure is missing: a code of `MissingRainCode`, or
 * - `short_record`: too few years of readings in that month for a normal.
 * - `no_dew_point`: a day of the window lacks its lowest temperature or a dew point.
 * - `no_latitude`: it is not known where the gauge stands.
 * - `soil_unknown`: the readings of rain and temperature do not reach back without a gap to a day on which the soil was known to be full or empty.
 */
export type MissingExposureCode = MissingRainCode | "short_record" | "no_dew_point" | "no_latitude" | "soil_unknown";

/** Why an exposure is missing, for counting and for reading. */
export interface MissingExposure {
  readonly code: MissingExposureCode;
  /** In plain words, with the numbers. */
  readonly text: string;
}

/**
 * Whether weather could be put beside a visit.
 * - `matched`: every rain total is known.
 * - `no_gauge`: no stay, yard, gauge or reading leads to the weather of the visit.
 * - `outside_readings`: the last admissible day lies before the first or after the last row of the gauge.
 * - `missing`: a day without a usable reading lies in a window.
 */
export type WeatherLinkage = "matched" | "no_gauge" | "outside_readings" | "missing";

/** Wetness before one visit to one horse. */
export interface ExposureBeforeVisit {
  readonly horseId: string;
  readonly visitDate: string;
  /** Yard of the horse on that day; null when it is not known. */
  readonly yardId: string | null;
  /** Gauge that stands for the yard; null when there is none. */
  readonly gaugeId: string | null;
  /** Distance from the yard to it, km; null when it is not recorded. */
  readonly gaugeKm: number | null;
  /** Date of the last reading that was used; every window ends on it. */
  readonly lastRainDay: string;
  readonly linkage: WeatherLinkage;
  /** Rain of the window, mm. */
  readonly [rain: `rainMm${number}d`]: number | null;
  /** That rain less what is usual at the gauge in that month, mm. */
  readonly [anomaly: `rainAnomalyMm${number}d`]: number | null;
  /** Years from which the usual rain is known. */
  readonly [years: `normalYears${number}d`]: number | null;
  /** Days of the window with rain of `wetDayMm` or more. */
  readonly [wet: `wetDays${number}d`]: number | null;
  /** Days of the window on which dew may have settled. */
  readonly [dew: `dewDays${number}d`]: number | null;
  /** Days of the window on which the full soil could not take all the rain. */
  readonly [surplus: `surplusDays${number}d`]: number | null;
  /** Antecedent precipitation index on `lastRainDay`, mm. */
  readonly [index: `apiMm${number}pct`]: number | null;
  /** Water in the soil at the end of `lastRainDay`, mm. */
  readonly soilStorageMm: number | null;
  /** The reason for each column that is null. */
  readonly missing: Readonly<Partial<Record<ExposureColumn, MissingExposure>>>;
}
