import { fabricMeasures } from "../../../derive/fabric/fabricMeasures.js";
import type { FootPair } from "../../../derive/fabric/FootPair.js";
import type { FootTable } from "../../../derive/fabric/FootTable.js";
import { standingFeet } from "../../../derive/fabric/standingFeet.js";
import { flipInflation } from "../../../estimate/fabric/flipInflation.js";
import { fromOtherDays } from "../../../estimate/fabric/fromOtherDays.js";
import { signFlips } from "../../../estimate/fabric/signFlips.js";
import { spreadOf } from "../../../estimate/fabric/spreadOf.js";
import { fewestDays } from "./fewestDays.js";
import type { FootLooks } from "./FootLooks.js";
import { someHorses } from "./someHorses.js";
import type { LabelWeights } from "./LabelWeights.js";
import { markGaps } from "./markGaps.js";
import { pairReadings } from "./pairReadings.js";
import { wordGaps } from "./wordGaps.js";

/**
 * The evidence on one pair of feet in every set of a herd, from the measures, horn colour, shoe and marks of the same feet on the horse's other
 * days.
 */
export function labelEvidence(table: FootTable, pair: FootPair, seen: FootLooks): LabelWeights {
  const sample = pairReadings(table, pair, someHorses(table));
  // Left less right is nought in the mean of a herd; fore less hind is not.
  const mirrored = pair[0].charAt(1) === pair[1].charAt(1);
  const spreads = fabricMeasures.map(({ step }, column) =>
    spreadOf(sample, column, { ...(mirrored && { mean: 0 }), least: (2 * step ** 2) / 12 }),
  );
  const groups = fabricMeasures.map(({ moves }) => ["wall", "toe", "heel", "frog"].indexOf(moves));
  const inflation = flipInflation(signFlips(sample, fromOtherDays(sample, spreads, fewestDays), groups));
  const gap = new Float64Array(table.sets.length);
  const best = new Float64Array(table.sets.length);
  const judgeable = new Uint8Array(table.sets.length);
  for (let horse = 0; horse + 1 < table.starts.length; horse++) {
    const from = table.starts[horse] ?? 0;
    const readings = pairReadings(table, pair, [horse]);
    const flips = signFlips(readings, fromOtherDays(readings, spreads, fewestDays), groups);
    flips.gap.forEach((of, at) => {
      gap[from + at] = of / inflation;
      best[from + at] = (flips.best[at] ?? 0) / inflation;
      judgeable[from + at] = (flips.information[at] ?? 0) > 0 ? 1 : 0;
    });
  }
  const places = [standingFeet.indexOf(pair[0]), standingFeet.indexOf(pair[1])] as const;
  const looks = [
    { title: "horn colour", gaps: wordGaps(table, seen.hornColour, places, fewestDays) },
    { title: "shoes", gaps: wordGaps(table, seen.shoe, places, fewestDays) },
    { title: "the mark on the wall", gaps: markGaps(table, seen, places) },
  ];
  for (const { gaps } of looks) {
    gaps.forEach((part, set) => {
      if (part === 0) return;
      gap[set] = (gap[set] ?? 0) + part;
      best[set] = Math.max(best[set] ?? 0, part);
      judgeable[set] = 1;
    });
  }
  return { pair, spreads, gap, best, judgeable, looks };
}
