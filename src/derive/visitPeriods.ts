import { dateOfDay } from "../study/dateOfDay.js";
import { grouped } from "../study/grouped.js";
import { requiredDay } from "./requiredDay.js";

/** A stretch of days after a visit in which the next visit to the horse came, or did not. */
export interface VisitPeriod {
  readonly horseId: string;
  /** Yard at the visit before. */
  readonly yardId: string | null;
  /** Day of the visit before. */
  readonly lastVisit: string;
  /** Whether the horse had thrush then; null when it was not graded. */
  readonly lastCase: boolean | null;
  /** First day of the stretch. */
  readonly from: string;
  /** Whole days from the visit before to `from`. */
  readonly daysSince: number;
  readonly visited: boolean;
  /** Day of the visit that came; null when none did. */
  readonly visitDate: string | null;
}

/** What is known of a horse at a visit. */
export interface TimedVisit {
  readonly horseId: string;
  readonly yardId: string | null;
  readonly visitDate: string;
  readonly thrush: boolean | null;
}

/**
 * The time between visits cut into stretches of `periodDays`, one row each, from the day after a visit to the next visit, or to `lastDay` when none came; by horse and day.
 * With it the chance of a visit can be regressed on what the visit before found.
 *
 * Missing: a horse's first visit has no row of its own. A horse not seen again for `lostAfterDays` is no longer waited for. Several rows of one horse and day count as one
 * visit, thrushy when any is. The last stretch before `lastDay` is left out when it is not whole.
 *
 * Errors: `not_a_date`.
 *
 * Source: common practice of discrete-time event histories, no source.
 */
export function visitPeriods(
  visits: readonly TimedVisit[],
  {
    periodDays = 7,
    lostAfterDays = 183,
    lastDay,
  }: { readonly periodDays?: number; readonly lostAfterDays?: number; readonly lastDay: string },
): VisitPeriod[] {
  const end = requiredDay(lastDay);
  const horses = [...grouped(visits, ({ horseId }) => horseId)].sort(([a], [b]) => (a < b ? -1 : 1));
  return horses.flatMap(([horseId, list]) => {
    const days = [...grouped(list, ({ visitDate }) => visitDate)].sort(([a], [b]) => (a < b ? -1 : 1));
    return days.flatMap(([lastVisit, rows], place) => {
      const start = requiredDay(lastVisit);
      const next = days[place + 1]?.[0] ?? null;
      const gap = next === null ? end - start : requiredDay(next) - start;
      const known = rows.filter(({ thrush }) => thrush !== null);
      const base = {
        horseId,
        yardId: rows[0]!.yardId,
        lastVisit,
        lastCase: known.length === 0 ? null : known.some(({ thrush }) => thrush),
      };
      const waited = Math.min(gap, lostAfterDays);
      const found = next !== null && gap <= lostAfterDays;
      const stretches = found ? Math.ceil(waited / periodDays) : Math.floor(waited / periodDays);
      return Array.from({ length: stretches }, (_, k): VisitPeriod => {
        const daysSince = k * periodDays;
        const visited = found && k === stretches - 1;
        return { ...base, from: dateOfDay(start + daysSince + 1), daysSince, visited, visitDate: visited ? next : null };
      });
    });
  });
}
