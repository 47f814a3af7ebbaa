import { StudyError } from "../study/StudyError.js";
import type { GrowthRates } from "./growthRates.js";

/**
 * The rates, when they make sense.
 *
 * Errors: `bad_growth_rate` unless 0 < slowest <= fastest.
 */
export function requireGrowthRates(rates: GrowthRates): GrowthRates {
  const { slowestMmPerDay, fastestMmPerDay } = rates;
  if (slowestMmPerDay > 0 && slowestMmPerDay <= fastestMmPerDay && fastestMmPerDay < Infinity) return rates;
  throw new StudyError(
    "bad_growth_rate",
    `Growth of ${slowestMmPerDay} to ${fastestMmPerDay} mm a day makes no sense.`,
    "Give two rates above 0, the slower one first.",
  );
}
