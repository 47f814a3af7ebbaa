import { dateOfDay } from "../study/dateOfDay.js";
import type { Foot } from "../study/Foot.js";
import type { FootVisit } from "../study/FootVisit.js";
import { byVisit } from "./byVisit.js";
import { type GrowthRates, growthRates } from "./growthRates.js";
import { requiredDay } from "./requiredDay.js";
import { requireGrowthRates } from "./requireGrowthRates.js";

/** When a mark on the wall left the coronet, as an interval. */
export interface MarkOrigin {
  readonly horseId: string;
  readonly foot: Foot;
  readonly visitDate: string;
  readonly markKind: "abscess_track" | "ring";
  readonly markBelowCoronetMm: number;
  /** Day of the event if the wall grew at the slowest rate. */
  readonly earliest: string;
  /** Day of the event if the wall grew at the fastest rate. */
  readonly latest: string;
}

/**
 * When the abscess tracks and rings of the wall began, one row for each measured mark, by day, horse and foot.
 *
 * Method: everything on the wall began at the coronet and moved down with the horn, so the day is the visit minus the distance over the
 * rate. Rates differ, so the day is an interval, from 0.202 to 0.31 mm a day unless other rates are given; ends are rounded to whole
 * days. A crack is left out: it may start at the ground.
 *
 * Missing: a mark without a distance has no row.
 *
 * Errors: `bad_growth_rate` unless 0 < slowest <= fastest.
 *
 * Source: Reilly JD et al. 1998, Equine Vet J Suppl 26:51 (ponies, 30.69 mm in 5 months, 0.202 mm a day); Kolstrung R et al. 2012,
 * Med Weter 68:426 (mares, 13 mm in 6 weeks, 0.31 mm a day).
 */
export function markOrigins(visits: readonly FootVisit[], rates: GrowthRates = growthRates.usual): MarkOrigin[] {
  const { slowestMmPerDay, fastestMmPerDay } = requireGrowthRates(rates);
  const rows = visits.flatMap(({ horseId, foot, visitDate, markKind, markBelowCoronetMm }): MarkOrigin[] => {
    if (markKind === null || markKind === "crack" || markBelowCoronetMm === null) return [];
    const before = (rate: number) => dateOfDay(requiredDay(visitDate) - Math.round(markBelowCoronetMm / rate));
    const [earliest, latest] = [before(slowestMmPerDay), before(fastestMmPerDay)];
    return [{ horseId, foot, visitDate, markKind, markBelowCoronetMm, earliest, latest }];
  });
  return rows.sort((a, b) => byVisit(a, b) || (a.foot < b.foot ? -1 : a.foot > b.foot ? 1 : 0));
}
