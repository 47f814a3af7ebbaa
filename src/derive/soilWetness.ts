import { StudyError } from "../study/StudyError.js";
import type { WaterDay } from "./dailyEvapotranspiration.js";
import { requiredDay } from "./requiredDay.js";

/** Choices of the water balance. */
export interface SoilWetnessOptions {
  /** Most water the soil holds for grass to use, mm. */
  readonly capacityMm: number;
  /** Water held at the end of the day before the first row, mm, where it is known. */
  readonly start?: number | undefined;
}

/** Water in the soil at the end of one day. */
export interface SoilWetness {
  readonly date: string;
  /** Water held, mm; null while what was held before the readings began still matters. */
  readonly storageMm: number | null;
  /** Water of the day that the full soil could not take, mm: it stands or runs off. Null when it is not known. */
  readonly surplusMm: number | null;
}

/**
 * Water in the soil, day by day, in the order of the dates: a single store that rain fills and grass empties.
 *
 * Method: storage = storage of the day before + rain - evapotranspiration, never below 0 nor above the capacity; what is above it is
 * surplus. Evapotranspiration goes on in full until the store is empty. Whole thousandths of a millimetre are counted.
 *
 * Missing: without a start, and again after each day without rain or evapotranspiration or without a row, two stores are followed, one
 * empty and one full. Storage is given from the day on which both hold the same, so that it never rests on a guessed start; a
 * surplus is given when it is the same in both.
 *
 * Errors: `bad_capacity`, `bad_start`; `doubled_day` when a date comes twice; `bad_water` for an amount below 0 or no number; `not_a_date`.
 *
 * Source: the single-store water balance of textbooks, common practice, no source. FAO Irrigation and Drainage Paper 56 puts the available water of
 * loam at about 0.15 mm in each mm of rooted depth (from memory), about 100 mm under grass.
 */
export function soilWetness(days: readonly WaterDay[], { capacityMm, start }: SoilWetnessOptions): SoilWetness[] {
  if (!(capacityMm > 0 && capacityMm <= 10_000)) {
    throw new StudyError("bad_capacity", `A soil that holds ${capacityMm} mm makes no sense.`, "Give a number of mm above 0.");
  }
  if (start !== undefined && !(start >= 0 && start <= capacityMm)) {
    throw new StudyError("bad_start", `A start of ${start} mm makes no sense.`, `Give 0 to ${capacityMm} mm, the capacity.`);
  }
  const capacity = micrometres(capacityMm);
  let [low, high] = start === undefined ? [0, capacity] : [micrometres(start), micrometres(start)];
  let before: number | null = null;
  return inOrder(days).map(({ day, date, rainMm, evapotranspirationMm }) => {
    if (before !== null && day !== before + 1) [low, high] = [0, capacity];
    before = day;
    if (rainMm === null || evapotranspirationMm === null) {
      [low, high] = [0, capacity];
      return { date, storageMm: null, surplusMm: null };
    }
    const gain = amount(rainMm, date) - amount(evapotranspirationMm, date);
    const surplus = Math.max(0, low + gain - capacity);
    const known = surplus === Math.max(0, high + gain - capacity);
    [low, high] = [held(low + gain, capacity), held(high + gain, capacity)];
    return { date, storageMm: low === high ? low / 1000 : null, surplusMm: known ? surplus / 1000 : null };
  });
}

function held(water: number, capacity: number): number {
  return Math.min(capacity, Math.max(0, water));
}

function inOrder(days: readonly WaterDay[]): (WaterDay & { readonly day: number })[] {
  const ordered = days.map((row) => ({ ...row, day: requiredDay(row.date) })).sort((a, b) => a.day - b.day);
  ordered.forEach(({ day, date }, place) => {
    if (day !== ordered[place - 1]?.day) return;
    throw new StudyError("doubled_day", `The day ${date} comes twice.`, "Give one row for each day, of one gauge.");
  });
  return ordered;
}

function amount(mm: number, date: string): number {
  if (mm >= 0 && mm < Infinity) return micrometres(mm);
  throw new StudyError(
    "bad_water",
    `An amount of ${mm} mm on ${date} makes no sense.`,
    "Give 0 mm or more, or null for not known.",
  );
}

function micrometres(mm: number): number {
  return Math.round(mm * 1000);
}
