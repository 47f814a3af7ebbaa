import { dateOfDay } from "../study/dateOfDay.js";
import type { FootVisit } from "../study/FootVisit.js";
import { grouped } from "../study/grouped.js";
import { type GrowthRates, growthRates } from "./growthRates.js";
import { type MarkTrack, markTracks } from "./markTracks.js";
import { requiredDay } from "./requiredDay.js";
import { requireGrowthRates } from "./requireGrowthRates.js";

/** When a mark on the wall left the coronet and when it will have reached the ground, both as intervals of days. */
export interface MarkTimes extends Pick<MarkTrack, "horseId" | "foot" | "markKind" | "sightings"> {
  /** Last sighting; both intervals are counted from it. */
  readonly seenOn: string;
  readonly belowCoronetMm: number;
  /** Day it began if the wall grew at the slowest rate. */
  readonly beganEarliest: string;
  /** Day it began if the wall grew at the fastest rate. */
  readonly beganLatest: string;
  /** Toe length of the foot, measured last up to the last sighting; null when none was, or the mark lies lower. */
  readonly toeLengthMm: number | null;
  readonly toeMeasuredOn: string | null;
  /** Day it reaches the ground at the toe at the fastest rate; null without a toe length. */
  readonly groundEarliest: string | null;
  /** The same at the slowest rate. */
  readonly groundLatest: string | null;
}

/**
 * Beginning and end of each mark on the wall that was followed, one row for each mark, by horse, foot, kind and day.
 *
 * Method: from the last sighting, back by the distance from the coronet over the rate of growth, and on by what is left of the toe wall
 * over the rate; from 0.202 to 0.31 mm a day unless other rates are given. Intervals are cut where they contradict what was seen: the
 * beginning does not lie after the first sighting. The toe length after a trim is preferred to another of the same day. It is the longest
 * part of the wall: a mark at a quarter or heel is out sooner, so `groundLatest` is late for it.
 *
 * Missing: without a toe length of that foot on record the end is null.
 *
 * Errors: `bad_growth_rate`; `not_a_date`.
 *
 * Source: rates as in `growthRates`; the rest is common practice, no source.
 */
export function markTimes(visits: readonly FootVisit[], rates: GrowthRates = growthRates.usual): MarkTimes[] {
  const { slowestMmPerDay, fastestMmPerDay } = requireGrowthRates(rates);
  const feet = grouped(visits, ({ horseId, foot }) => `${horseId}\n${foot}`);
  return markTracks(visits).map(({ horseId, foot, markKind, sightings }): MarkTimes => {
    const { visitDate: seenOn, belowCoronetMm } = sightings.at(-1)!;
    const seenDay = requiredDay(seenOn);
    const back = (mmPerDay: number) => {
      const began = dateOfDay(seenDay - Math.round(belowCoronetMm / mmPerDay));
      return began < sightings[0]!.visitDate ? began : sightings[0]!.visitDate;
    };
    const toe = lastToe(feet.get(`${horseId}\n${foot}`) ?? [], seenOn);
    const left = toe === null || toe.toeLengthMm < belowCoronetMm ? null : toe.toeLengthMm - belowCoronetMm;
    const on = (mmPerDay: number) => (left === null ? null : dateOfDay(seenDay + Math.round(left / mmPerDay)));
    return {
      ...{ horseId, foot, markKind, sightings, seenOn, belowCoronetMm },
      ...{ beganEarliest: back(slowestMmPerDay), beganLatest: back(fastestMmPerDay) },
      toeLengthMm: left === null ? null : toe!.toeLengthMm,
      toeMeasuredOn: left === null ? null : toe!.visitDate,
      ...{ groundEarliest: on(fastestMmPerDay), groundLatest: on(slowestMmPerDay) },
    };
  });
}

function lastToe(
  visits: readonly FootVisit[],
  upTo: string,
): { readonly toeLengthMm: number; readonly visitDate: string } | null {
  const rank = ({ visitDate, stage }: FootVisit) => `${visitDate} ${stage === "after_trim" ? 1 : 0}`;
  let last: FootVisit | null = null;
  for (const visit of visits) {
    if (visit.toeLengthMm === null || visit.visitDate > upTo) continue;
    if (last === null || rank(visit) > rank(last)) last = visit;
  }
  return last === null ? null : { toeLengthMm: last.toeLengthMm!, visitDate: last.visitDate };
}
