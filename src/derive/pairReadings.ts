import type { ShapeMeasureRow } from "./ShapeMeasureRow.js";
import type { UnevenPair } from "./unevenPairs.js";

/**
 * Left less right toe angle of each pair as rows over time, so that a trend of pairs can be had as one of feet is: `footId` is the horse with
 * `fore pair` or `hind pair`, `foot` the left one, `value` the difference in degrees. In the order given.
 *
 * Missing: a pair without both toe angles has no row. What belongs to a single foot (age class, shoeing, observer) is null.
 */
export function pairReadings(pairs: readonly UnevenPair[]): ShapeMeasureRow[] {
  const firstDays = new Map<string, number>();
  return pairs.flatMap(({ horseId, yardId, visitDate, end, stage, toeAngleDifferenceDeg }): ShapeMeasureRow[] => {
    if (toeAngleDifferenceDeg === null) return [];
    const footId = `${horseId} ${end} pair`;
    const day = Date.parse(`${visitDate}T00:00:00Z`) / 86_400_000;
    const history = `${footId}\n${stage ?? ""}`;
    const first = firstDays.get(history) ?? day;
    firstDays.set(history, first);
    return [
      {
        ...{ horseId, footId, yardId, species: null, type: null, ageClass: null, shoeing: null, visitDate },
        ...{ daysSinceFirst: day - first, foot: end === "fore" ? "LF" : "LH", end, side: "left", stage, observerId: null },
        ...{ measure: "toeAngleDeg", value: toeAngleDifferenceDeg },
      },
    ];
  });
}
