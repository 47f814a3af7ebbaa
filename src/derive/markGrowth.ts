import { dateOfDay } from "../study/dateOfDay.js";
import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import { type AgeClass, ageClass } from "./ageClass.js";
import { footEnd } from "./footEnd.js";
import { footShoeing } from "./footShoeing.js";
import type { GrowthRates } from "./growthRates.js";
import { type MarkTrack, markTracks } from "./markTracks.js";
import { requiredDay } from "./requiredDay.js";
import { type Season, seasonOf } from "./seasonOf.js";
import { stayAt } from "./stayAt.js";

/** How far one mark moved down the wall between two visits: growth itself. */
export interface MarkGrowth extends Pick<MarkTrack, "horseId" | "foot" | "markKind"> {
  /** Horse and foot in one word, as a mixed model wants it. */
  readonly footId: string;
  readonly yardId: string | null;
  readonly end: "fore" | "hind" | null;
  /** Usual state of this foot. */
  readonly shoeing: "bare" | "shod" | null;
  readonly ageClass: AgeClass | null;
  /** Season of the middle of the span. */
  readonly season: Season;
  readonly from: string;
  readonly to: string;
  readonly days: number;
  readonly fromMm: number;
  readonly toMm: number;
  readonly grownMm: number;
  readonly grownMmPerDay: number;
}

/**
 * Growth of the wall from marks that were seen again, one row for each pair of following sightings of one mark, by horse, foot, kind and
 * day.
 *
 * Method: distance from the coronet at the later visit minus that at the earlier one, over the calendar days between; `markTracks` says
 * which sightings are the same mark. A trim or wear at the ground does not touch this distance; a difference of toe lengths across a
 * trim is never used. A reading error of 1 mm at both ends is 1.4 mm of growth whatever the span, so short spans say little: weigh by
 * days, as by the growth summed over the days summed.
 *
 * Missing: a mark that was seen once has no row; shoeing and age class are null when the stay does not say them.
 *
 * Errors: `bad_growth_rate`; `not_a_date`.
 *
 * Source: common practice, no source; that only the distance from the coronet measures growth is also said by Curtis S et al. 2014,
 * Vet J 201:116.
 */
export function markGrowth(study: Pick<Study, "visits" | "horses">, rates?: GrowthRates): MarkGrowth[] {
  const stays = grouped(study.horses, (stay) => stay.horseId);
  return markTracks(study.visits, rates).flatMap(({ horseId, foot, markKind, sightings }) =>
    sightings.slice(1).map((later, place): MarkGrowth => {
      const earlier = sightings[place]!;
      const [from, to] = [earlier.visitDate, later.visitDate];
      const [fromDay, toDay] = [requiredDay(from), requiredDay(to)];
      const [fromMm, toMm] = [earlier.belowCoronetMm, later.belowCoronetMm];
      const stay = stayAt(stays.get(horseId) ?? [], horseId, to);
      return {
        ...{ horseId, foot, markKind, footId: `${horseId} ${foot}`, yardId: stay?.yardId ?? null, end: footEnd(foot) },
        shoeing: footShoeing({ foot, shoeState: null }, stay),
        ageClass: ageClass(stay?.birthYear ?? null, to),
        season: seasonOf(dateOfDay(Math.floor((fromDay + toDay) / 2))),
        ...{ from, to, days: toDay - fromDay, fromMm, toMm, grownMm: toMm - fromMm },
        grownMmPerDay: (toMm - fromMm) / (toDay - fromDay),
      };
    }),
  );
}
