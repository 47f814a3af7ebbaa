import { dayNumber } from "../study/dayNumber.js";
import { StudyError } from "../study/StudyError.js";
import { dailyRain, type RainReading } from "./dailyRain.js";

/** Choices of `rainIndices`. */
export interface RainIndicesOptions {
  readonly year: number;
  /** One month of the year, 1 to 12; the whole year when left out. */
  readonly month?: number | undefined;
  /**
   * - `year-end` (usual): a spell may begin before the year or month, with its full length, and counts where it ends.
   * - `within-year`: a spell is cut off at both ends of the year or month.
   */
  readonly spells?: "year-end" | "within-year" | undefined;
  /** With more missing days than this no index is given: 15 for a year, 3 for a month when left out. */
  readonly missingDaysAllowed?: number | undefined;
}

/** Rain indices of one year or month. Null when too many days are missing. */
export interface RainIndices {
  readonly year: number;
  /** 1 to 12; null for the whole year. */
  readonly month: number | null;
  readonly days: number;
  readonly missingDays: number;
  /** PRCPTOT: rain of the wet days, mm. */
  readonly prcptotMm: number | null;
  /** R1mm: days with 1 mm or more. */
  readonly wetDays: number | null;
  /** SDII: mean rain of a wet day, mm; null also without a wet day. */
  readonly sdiiMm: number | null;
  /** CDD: most days in a row below 1 mm. */
  readonly cddDays: number | null;
  /** CWD: most days in a row with 1 mm or more. */
  readonly cwdDays: number | null;
  /** R10mm, R20mm: days with 10, 20 mm or more. */
  readonly r10mmDays: number | null;
  readonly r20mmDays: number | null;
  /** RX1day: most rain of one day, mm. */
  readonly rx1dayMm: number | null;
  /** RX5day: most rain of five days in a row that end in the year or month, mm. */
  readonly rx5dayMm: number | null;
}

const WET = 1000;

/**
 * Indices of rain of one year or month of one gauge, as the Expert Team on Climate Change Detection and Indices defines them.
 *
 * Method: a wet day has 1 mm or more. Sums are exact in thousandths of a millimetre. The five days of RX5day may begin before the year. A spell
 * that runs on past the end counts in the year in which it ends, so a year from whose first to last day one such spell holds has
 * none of its own: null; where no spell ends it is 0. With `within-year` a spell is cut off instead.
 *
 * Missing: `missingDays` counts the days without a usable reading (`dailyRain`), also those before and after the record. More than 15 in a
 * year or 3 in a month and every index is null; up to that they are given from the days that are known, so that sums and counts are
 * a little low, never scaled up. A missing day ends a spell. Five days with a missing one are not summed.
 *
 * Errors: `bad_year`, `bad_month`, `bad_spells`, `bad_missing_days`; `several_gauges`; `bad_rain`; `not_a_date`.
 *
 * Source: ETCCDI list of 27 core climate change indices; rules for spells and missing days as in the R package climdex.pcic 1.2-0.
 */
export function rainIndices(days: readonly RainReading[], options: RainIndicesOptions): RainIndices {
  const { year, month, spells = "year-end", missingDaysAllowed = month === undefined ? 15 : 3 } = options;
  refuseUnless(Number.isInteger(year) && year >= 1000 && year <= 9998, "bad_year", `A year ${year}`, "a year such as 2024");
  const monthFits = month === undefined || (Number.isInteger(month) && month >= 1 && month <= 12);
  refuseUnless(monthFits, "bad_month", `A month ${month ?? ""}`, "a month from 1 to 12");
  refuseUnless(["year-end", "within-year"].includes(spells), "bad_spells", `The rule ${spells}`, "year-end or within-year");
  const allowed = Number.isInteger(missingDaysAllowed) && missingDaysAllowed >= 0;
  refuseUnless(allowed, "bad_missing_days", `${missingDaysAllowed} missing days`, "a whole number of days from 0");

  const record = dailyRain(days);
  const recordStart = dayNumber(record[0]?.date ?? "") ?? 0;
  const rainOf = (day: number) => record[day - recordStart]?.rainMicrometres ?? null;
  const start = firstOf(year, month ?? 1);
  const end = month === undefined ? firstOf(year + 1, 1) : month === 12 ? firstOf(year + 1, 1) : firstOf(year, month + 1);
  const inside = Array.from({ length: end - start }, (_, place) => rainOf(start + place));
  const known = inside.filter((rain) => rain !== null);
  const base = { year, month: month ?? null, days: inside.length, missingDays: inside.length - known.length };
  if (base.missingDays > missingDaysAllowed) return { ...base, ...withheld };

  const wet = known.filter((rain) => rain >= WET);
  const total = wet.reduce((sum, rain) => sum + rain, 0);
  const fives = inside.flatMap((_, place) => fiveDays(start + place, rainOf) ?? []);
  const longest = (is: (rain: number) => boolean) => {
    const holds = (day: number) => {
      const rain = rainOf(day);
      return rain !== null && is(rain);
    };
    return spells === "within-year" ? longestWithin(start, end, holds) : longestEnding(start, end, holds);
  };
  const most = (values: readonly number[]) => (values.length === 0 ? null : values.reduce((a, b) => Math.max(a, b)) / 1000);
  return {
    ...base,
    prcptotMm: total / 1000,
    wetDays: wet.length,
    sdiiMm: wet.length === 0 ? null : total / wet.length / 1000,
    cddDays: longest((rain) => rain < WET),
    cwdDays: longest((rain) => rain >= WET),
    r10mmDays: known.filter((rain) => rain >= 10 * WET).length,
    r20mmDays: known.filter((rain) => rain >= 20 * WET).length,
    rx1dayMm: most(known),
    rx5dayMm: most(fives),
  };
}

const withheld = {
  ...{ prcptotMm: null, wetDays: null, sdiiMm: null, cddDays: null, cwdDays: null },
  ...{ r10mmDays: null, r20mmDays: null, rx1dayMm: null, rx5dayMm: null },
} as const;

function firstOf(year: number, month: number): number {
  return dayNumber(`${year}-${String(month).padStart(2, "0")}-01`)!;
}

function fiveDays(last: number, rainOf: (day: number) => number | null): number | null {
  let sum = 0;
  for (let day = last - 4; day <= last; day++) {
    const rain = rainOf(day);
    if (rain === null) return null;
    sum += rain;
  }
  return sum;
}

/** Longest run of days that hold, cut off at both ends. */
function longestWithin(start: number, end: number, holds: (day: number) => boolean): number {
  let [longest, run] = [0, 0];
  for (let day = start; day < end; day++) {
    run = holds(day) ? run + 1 : 0;
    longest = Math.max(longest, run);
  }
  return longest;
}

/** Longest run of days that hold and whose last one lies inside, with its days before the start; null when one run fills it and goes on. */
function longestEnding(start: number, end: number, holds: (day: number) => boolean): number | null {
  let run = 0;
  while (holds(start - 1 - run)) run++;
  let [longest, ended] = [0, false];
  for (let day = start; day < end; day++) {
    if (!holds(day)) ended = true;
    run = holds(day) ? run + 1 : 0;
    if (!holds(day + 1)) [longest, ended] = [Math.max(longest, run), true];
  }
  return ended ? longest : null;
}

function refuseUnless(sound: boolean, code: string, what: string, wanted: string): void {
  if (!sound) throw new StudyError(code, `${what} makes no sense here.`, `Give ${wanted}.`);
}
