import { fabricMeasures } from "../../derive/fabric/fabricMeasures.js";
import type { FootTable } from "../../derive/fabric/FootTable.js";
import { tableOfFeet } from "../../derive/fabric/tableOfFeet.js";
import { flipPart } from "../../estimate/fabric/flipPart.js";
import { fromOtherDays } from "../../estimate/fabric/fromOtherDays.js";
import { historyOf } from "../../estimate/fabric/historyOf.js";
import type { Issue } from "../../study/Issue.js";
import type { Study } from "../../study/Study.js";
import { fabricIssue } from "./fabricIssue.js";
import { fewestDays } from "./swaps/fewestDays.js";
import { labelEvidence } from "./swaps/labelEvidence.js";
import type { LabelWeights } from "./swaps/LabelWeights.js";
import { leftWithoutBest } from "./swaps/leftWithoutBest.js";
import { pairReadings } from "./swaps/pairReadings.js";
import { seenOfFeet } from "./swaps/seenOfFeet.js";
import { signedMeasure } from "./swaps/signedMeasure.js";
import type { Swap } from "./swaps/Swap.js";
import { swapLimit } from "./swaps/swapLimit.js";
import { swaps } from "./swaps/swaps.js";

/** Diagonal feet must fit this much better than a plainer mistake that is told too, since fore and hind differ more than left and right. */
const HANDICAP = 4;
const MEASURES_SHOWN = 2;

interface Told {
  readonly swap: Swap;
  readonly gap: number;
  readonly weights: readonly LabelWeights[];
}

/**
 * Sets of feet whose labels were probably exchanged: front and hind, left and right, or diagonally, on one pair of feet or two.
 *
 * Method: each set is held against the same horse on its other days, three days or more in all. The difference between the two feet of a pair
 * would change its sign; how much better that fits is a log-likelihood gap, from the ten measures with the spread of the herd, the horn
 * colour, the shoe, and an abscess track, which moves down its own foot. Gaps of measures are divided by how much they scatter beyond
 * independence (`flipInflation`). A swap is told from the gap of `swapLimit` on, for all sets and swaps that are looked for, if 4 of it are
 * left without its most telling part, where measures that change together on one foot, as width and wall angles do with a flare, are one part; of several the best.
 *
 * Missing: feet without a history, or alike in everything, cannot be judged and raise nothing.
 *
 * Source: fore wider than hind is known of horses, mules and donkeys, but the horse's own past is better; the likelihood is own.
 */
export function swappedLabels({ visits }: Pick<Study, "visits">, table: FootTable = tableOfFeet(visits)): Issue[] {
  const looks = seenOfFeet(table);
  const pairs = new Set(swaps.flatMap((swap) => swap.pairs));
  const weights = new Map([...pairs].map((pair) => [pair, labelEvidence(table, pair, looks)]));
  const sought = swaps.map((swap) => ({ swap, weights: swap.pairs.flatMap((pair) => weights.get(pair) ?? []) }));
  const judged = table.sets.filter((_, set) => [...weights.values()].some(({ judgeable }) => judgeable[set] === 1)).length;
  const limit = swapLimit(judged * swaps.length);
  return table.sets.flatMap((_, place) => {
    let best: Told | null = null;
    for (const { swap, weights: used } of sought) {
      let [gap, most] = [0, 0];
      for (const each of used) {
        gap += each.gap[place] ?? 0;
        most = Math.max(most, each.best[place] ?? 0);
      }
      if (gap < limit || gap - most < leftWithoutBest) continue;
      if (best === null || gap - handicap(swap) > best.gap - handicap(best.swap)) best = { swap, gap, weights: used };
    }
    return best === null ? [] : [issueOf(table, place, best, limit, judged)];
  });
}

function handicap({ code }: Swap): number {
  return code === "diagonals_swapped" ? HANDICAP : 0;
}

function issueOf(table: FootTable, place: number, { swap, gap, weights }: Told, limit: number, judged: number): Issue {
  const { horseId = "", visitDate = "", rows: ofFeet = {} } = table.sets[place] ?? {};
  const rows = swap.pairs.flat().flatMap((foot) => ofFeet[foot] ?? []);
  const lines = rows.map(({ line }) => line).sort((a, b) => a - b);
  const measures = weights
    .flatMap((each) => measureParts(table, place, each))
    .filter(({ part }) => part > 0)
    .sort((a, b) => b.part - a.part)
    .slice(0, MEASURES_SHOWN)
    .map(({ words }) => words);
  const seen = weights.flatMap(({ pair, looks }) =>
    looks
      .filter(({ gaps }) => (gaps[place] ?? 0) > 1)
      .map(({ title }) => `${title} of ${pair.join(" and ")} fits the other way round`),
  );
  const pairs = swap.pairs.map((pair) => pair.join(" with ")).join(", ");
  return fabricIssue({
    file: rows[0]?.file ?? "visits.csv",
    line: lines[0] ?? null,
    column: "foot",
    code: swap.code,
    found:
      `${swap.words} of ${horseId} on ${visitDate} were probably exchanged (${pairs}): ` +
      [...measures, ...seen].join("; ") +
      `; the log-likelihood is better by ${gap.toFixed(1)} the other way round, where ${limit.toFixed(1)} is asked of ${judged} sets`,
    hint: `Look at the paper record of that day; if it is so, correct foot in lines ${lines.join(", ")}.`,
  });
}

/** What each measure of a pair says in one set: its part of the gap, and words for it. */
function measureParts(table: FootTable, place: number, { pair, spreads }: LabelWeights) {
  const horse = horseAt(table, place);
  const row = place - (table.starts[horse] ?? 0);
  const readings = pairReadings(table, pair, [horse]);
  const { expected, variance } = fromOtherDays(readings, spreads, fewestDays);
  return fabricMeasures.map(({ title, unit }, column) => {
    const at = row * readings.columns + column;
    const value = readings.values[at] ?? NaN;
    const { mean, days } = historyOf(readings, row, column);
    const words =
      `${title} ${pair.join(" less ")} is ${signedMeasure(value, unit)} here and ${signedMeasure(mean, unit)} on ` +
      `${days} other days`;
    return { part: flipPart(value, expected[at] ?? NaN, variance[at] ?? NaN), words };
  });
}

function horseAt({ starts }: FootTable, place: number): number {
  return starts.findIndex((start) => start > place) - 1;
}
