import type { Foot } from "../study/Foot.js";
import type { FootVisit } from "../study/FootVisit.js";
import { footDays } from "./footDays.js";
import { footSide } from "./footSide.js";
import type { GrowthRates } from "./growthRates.js";
import { requiredDay } from "./requiredDay.js";
import { requireGrowthRates } from "./requireGrowthRates.js";

/** One mark on the wall of one foot, followed from visit to visit. */
export interface MarkTrack {
  readonly horseId: string;
  readonly foot: Foot;
  readonly markKind: "abscess_track" | "ring";
  /** Where the mark was found, in order of time; at least one sighting. */
  readonly sightings: readonly MarkSighting[];
  /** Why it was taken as another mark than the one of its kind before it; null for the first of its kind on the foot. */
  readonly notTheOneBefore: "it would have moved up" | "it would have grown too slowly" | "it would have grown too fast" | null;
}

/** A mark on one day. */
export interface MarkSighting {
  readonly visitDate: string;
  readonly belowCoronetMm: number;
}

/** Growth that a wall may show, reading error of a short span included. */
const plausible: GrowthRates = { slowestMmPerDay: 0.05, fastestMmPerDay: 0.6 };

/**
 * Marks on the wall that were seen again, by horse, foot, kind and day. The way to measure growth: what began at the coronet travels
 * down with the horn, whatever is trimmed or worn away below.
 *
 * Method: a sighting is the mark seen before on that foot when it is of the same kind, lies further down and has moved at a rate of
 * 0.05 to 0.6 mm a day, unless other rates are given; otherwise it starts a track of its own, with the reason. Of several rows of one day
 * the first with that kind counts. Cracks are left out: their upper end may climb. Two marks of one kind on one foot at one time cannot be
 * told apart, since a row holds one.
 *
 * Missing: a mark without a distance is no sighting; a visit that names no mark ends nothing. Specimens have no history.
 *
 * Errors: `bad_growth_rate`; `not_a_date`.
 *
 * Source: common practice, no source: a mark of the wall never moves up.
 */
export function markTracks(visits: readonly FootVisit[], rates: GrowthRates = plausible): MarkTrack[] {
  const { slowestMmPerDay, fastestMmPerDay } = requireGrowthRates(rates);
  const histories = footDays(visits.filter(({ foot }) => footSide(foot) !== null));
  return histories.flatMap((history) =>
    (["abscess_track", "ring"] as const).flatMap((kind) => {
      const tracks: { -readonly [Key in keyof MarkTrack]: MarkTrack[Key] }[] = [];
      for (const { visitDate, rows } of history) {
        const row = rows.find(({ markKind, markBelowCoronetMm }) => markKind === kind && markBelowCoronetMm !== null);
        if (row === undefined) continue;
        const sighting = { visitDate, belowCoronetMm: row.markBelowCoronetMm! };
        const track = tracks.at(-1);
        const before = track?.sightings.at(-1);
        const why = before === undefined ? null : otherMark(before, sighting, slowestMmPerDay, fastestMmPerDay);
        if (track !== undefined && why === null) track.sightings = [...track.sightings, sighting];
        else tracks.push({ horseId: row.horseId, foot: row.foot, markKind: kind, sightings: [sighting], notTheOneBefore: why });
      }
      return tracks;
    }),
  );
}

function otherMark(
  before: MarkSighting,
  now: MarkSighting,
  slowestMmPerDay: number,
  fastestMmPerDay: number,
): MarkTrack["notTheOneBefore"] {
  const moved = now.belowCoronetMm - before.belowCoronetMm;
  const rate = moved / (requiredDay(now.visitDate) - requiredDay(before.visitDate));
  if (moved < 0) return "it would have moved up";
  if (rate < slowestMmPerDay) return "it would have grown too slowly";
  return rate > fastestMmPerDay ? "it would have grown too fast" : null;
}
