import { requiredDay } from "./requiredDay.js";

/** Age of a horse in classes whose feet are not compared with each other. */
export type AgeClass = "foal" | "yearling" | "young" | "adult" | "aged";

/**
 * Age class of a horse on a day; null when its year of birth is not known, or lies after that day.
 *
 * Method: calendar year of the day minus year of birth, since only the year is on record: foal in the year of birth, yearling in the
 * next, young at 2 and 3, adult from 4 to 14, aged from 15.
 *
 * Errors: `not_a_date`.
 *
 * Source: common practice, no source; aged from 15 as in Ireland JL et al. 2012, Equine Vet J 44:101.
 */
export function ageClass(birthYear: number | null, date: string): AgeClass | null {
  requiredDay(date);
  if (birthYear === null) return null;
  const years = Number(date.slice(0, 4)) - birthYear;
  if (years < 0) return null;
  if (years === 0) return "foal";
  if (years === 1) return "yearling";
  if (years <= 3) return "young";
  return years < 15 ? "adult" : "aged";
}
