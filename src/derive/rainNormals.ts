import { StudyError } from "../study/StudyError.js";
import { rollingRain } from "./rollingRain.js";
import type { RainReading } from "./dailyRain.js";

/** Usual rain of one calendar month at one gauge. */
export interface RainNormal {
  /** 1 to 12. */
  readonly month: number;
  /** Usual total of the window, mm; null when too few years are known. */
  readonly normalMm: number | null;
  /** Years that count. */
  readonly years: number;
}

/** Choices of `rainNormals`. */
export interface RainNormalsOptions {
  /** Fewest years from which a normal is given; 2 when left out. A climate normal proper takes 30 years. */
  readonly minimumYears?: number | undefined;
}

const FEWEST_DAYS = 20;

/**
 * Usual rain of one gauge in each calendar month, from its own record: twelve rows, January first.
 *
 * Method: the total of the `windowDays` days that end on a day (`rollingRain`), averaged over the days of the month in each year, then over
 * the years, each with the same weight. All years of the record are used, also the one a departure will be taken from: with n years a
 * departure is shrunk by about 1/n, alike for every day of a month.
 *
 * Missing: a year counts for a month when 20 or more of its days have a complete window. Null with fewer years than `minimumYears`: a
 * normal from one year would be that year's own rain.
 *
 * Errors: `bad_window`; `bad_minimum_years`; `several_gauges`; `bad_rain`; `not_a_date`.
 *
 * Source: definition; 30 years are the period of the World Meteorological Organization's climatological standard normals (from memory).
 */
export function rainNormals(
  days: readonly RainReading[],
  windowDays: number,
  { minimumYears = 2 }: RainNormalsOptions = {},
): RainNormal[] {
  if (!(Number.isInteger(minimumYears) && minimumYears >= 1)) {
    throw new StudyError(
      "bad_minimum_years",
      `A least number of ${minimumYears} years makes no sense.`,
      "Give a whole number from 1.",
    );
  }
  const months = new Map<string, { sum: number; days: number }>();
  for (const { date, rainMm } of rollingRain(days, windowDays)) {
    if (rainMm === null) continue;
    const month = months.get(date.slice(0, 7)) ?? { sum: 0, days: 0 };
    month.sum += Math.round(rainMm * 1000);
    month.days += 1;
    months.set(date.slice(0, 7), month);
  }
  return Array.from({ length: 12 }, (_, place) => {
    const means = [...months]
      .filter(([month, { days }]) => Number(month.slice(5)) === place + 1 && days >= FEWEST_DAYS)
      .map(([, { sum, days }]) => sum / days / 1000);
    const mean = means.reduce((sum, value) => sum + value, 0) / means.length;
    return { month: place + 1, normalMm: means.length < minimumYears ? null : mean, years: means.length };
  });
}
