import { StudyError } from "../study/StudyError.js";
import { dailyRain, type RainReading } from "./dailyRain.js";

/** Choices of the antecedent precipitation index. */
export interface AntecedentPrecipitationOptions {
  /** Share of the index that is left after a day, between 0 and 1. */
  readonly decayPerDay: number;
  /** Unbroken days of readings, the day itself included, before the index is given. */
  readonly warmUpDays: number;
  /** Index at the end of the day before the first row, mm, where it is known; the first run then needs no warm-up. */
  readonly start?: number;
}

/** Antecedent precipitation index at the end of one gauge day. */
export interface AntecedentPrecipitation {
  readonly date: string;
  /** The index, mm; null until the warm-up is over. */
  readonly apiMm: number | null;
  /** Days of readings without a break that end on this date. */
  readonly unbrokenDays: number;
}

/**
 * Antecedent precipitation index of one gauge, one row for each calendar day from its first to its last row: a stand-in for how wet
 * the ground is, in which old rain fades.
 *
 * Method: index(t) = decay × index(t - 1) + rain(t). A run of readings begins at 0 and the index is given from the day on which
 * `warmUpDays` readings stand in a row; what was before the run then weighs at most decay^warmUpDays of its value (0.2 % for 0.9 and 60 days).
 *
 * Missing: a day without a usable reading ends the run, the index is null there and until a new run has warmed up; rain is never
 * taken as 0.
 *
 * Errors: `bad_decay` outside 0 to 1; `bad_warm_up`; `bad_start`; `several_gauges`; `bad_rain`; `not_a_date`.
 *
 * Source: Kohler MA, Linsley RK 1951, Predicting the runoff from storm rainfall, Weather Bureau Research Paper 34; the decay is usually
 * put at 0.80-0.98 a day.
 */
export function antecedentPrecipitation(
  days: readonly RainReading[],
  { decayPerDay, warmUpDays, start }: AntecedentPrecipitationOptions,
): AntecedentPrecipitation[] {
  refuseUnless(decayPerDay > 0 && decayPerDay < 1, "bad_decay", `A decay of ${decayPerDay} a day`, "a number between 0 and 1");
  refuseUnless(
    Number.isSafeInteger(warmUpDays) && warmUpDays >= 1,
    "bad_warm_up",
    `A warm-up of ${warmUpDays} days`,
    "a whole number of days, 1 or more",
  );
  refuseUnless(start === undefined || start >= 0, "bad_start", `A start of ${start ?? ""} mm`, "0 mm or more");
  let known = start !== undefined;
  let [index, unbrokenDays] = [start ?? 0, 0];
  return dailyRain(days).map(({ date, rainMicrometres }) => {
    if (rainMicrometres === null) {
      [known, index, unbrokenDays] = [false, 0, 0];
      return { date, apiMm: null, unbrokenDays };
    }
    index = decayPerDay * index + rainMicrometres / 1000;
    unbrokenDays++;
    return { date, apiMm: known || unbrokenDays >= warmUpDays ? index : null, unbrokenDays };
  });
}

function refuseUnless(sound: boolean, code: string, what: string, wanted: string): void {
  if (!sound) throw new StudyError(code, `${what} makes no sense.`, `Give ${wanted}.`);
}
