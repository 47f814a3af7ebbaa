import { fabricIssue } from "./fabricIssue.js";
import { fabricMeasures } from "../../derive/fabric/fabricMeasures.js";
import type { FootPair } from "../../derive/fabric/FootPair.js";
import type { FootSet } from "../../derive/fabric/FootSet.js";
import { footSets } from "../../derive/fabric/footSets.js";
import { flipInflation } from "../../estimate/swap/flipInflation.js";
import { grouped } from "../../study/grouped.js";
import type { Issue } from "../../study/Issue.js";
import type { Study } from "../../study/Study.js";
import { footHistories } from "./swaps/footHistories.js";
import type { PairSwap } from "./swaps/PairSwap.js";
import { pairEvidence } from "./swaps/pairEvidence.js";
import { signedMeasure } from "./swaps/signedMeasure.js";
import type { Swap } from "./swaps/Swap.js";
import { swapLimit } from "./swaps/swapLimit.js";
import { swaps } from "./swaps/swaps.js";
import { LEFT_WITHOUT_BEST, withoutBest } from "./swaps/withoutBest.js";

/** Diagonal feet must fit this much better than a plainer mistake that is told too, since fore and hind differ more than left and right. */
const HANDICAP = 4;
const MEASURES_SHOWN = 2;

/** The evidence on one pair of feet in all sets, and by how much its measures scatter beyond independence. */
interface PairWeights {
  readonly pair: FootPair;
  readonly inflation: number;
  readonly of: ReadonlyMap<FootSet, PairSwap>;
}

interface Told {
  readonly swap: Swap;
  readonly gap: number;
  readonly evidence: readonly { readonly pair: FootPair; readonly found: PairSwap }[];
}

/**
 * Sets of feet whose labels were probably exchanged: front and hind, left and right, or diagonally, on one pair of feet or two.
 *
 * Method: each set is held against the same horse on its other days, three days or more in all. The difference between the two feet of a pair
 * would change its sign; how much better that fits is a log-likelihood gap, from the ten measures with the spread of the herd, the horn
 * colour, the shoe, and an abscess track, which moves down its own foot. Gaps of measures are divided by how much they scatter beyond
 * independence (`flipInflation`). A swap is told from the gap of `swapLimit` on, if 4 of it are left without its most telling part; of several
 * the best.
 *
 * Missing: feet without a history, or alike in everything, cannot be judged and raise nothing.
 *
 * Source: fore wider than hind is known of horses, mules and donkeys, but the horse's own past is better; the likelihood is own.
 */
export function swappedLabels({ visits }: Pick<Study, "visits">, sets: readonly FootSet[] = footSets(visits)): Issue[] {
  const weights = weightsOf(sets);
  const judged = sets.filter((set) => weights.some(({ of }) => judgeable(of.get(set)))).length;
  const limit = swapLimit(judged);
  return sets.flatMap((set) => {
    const gaps = new Map(weights.map((weight) => [weight.pair, gapOf(set, weight)]));
    const told = swaps
      .filter(({ pairs }) => pairs.reduce((sum, pair) => sum + (gaps.get(pair) ?? 0), 0) >= limit)
      .flatMap((swap) => toldBy(set, swap, weights) ?? []);
    const best = bestOf(told);
    return best === null ? [] : [issueOf(set, best, limit, judged)];
  });
}

function weightsOf(sets: readonly FootSet[]): PairWeights[] {
  const histories = [...grouped(sets, ({ horseId }) => horseId).values()];
  const feet = footHistories(sets);
  return [...grouped(swaps, ({ code }) => code).values()].flatMap((ofCode) => {
    const single = ofCode.flatMap(({ pairs }) => (pairs.length === 1 ? pairs : []));
    const evidence = single.map((pair) => ({ pair, of: pairEvidence(histories, pair, feet) }));
    const inflation = flipInflation(evidence.flatMap(({ of }) => [...of.values()]));
    return evidence.map((each) => ({ ...each, inflation }));
  });
}

function judgeable(evidence: PairSwap | undefined): boolean {
  return evidence !== undefined && (evidence.information > 0 || evidence.others.some(({ gap }) => gap !== 0));
}

function gapOf(set: FootSet, { of, inflation }: PairWeights): number {
  const evidence = of.get(set);
  if (evidence === undefined) return 0;
  return evidence.others.reduce((sum, { gap }) => sum + gap, evidence.gap / inflation);
}

function toldBy(set: FootSet, swap: Swap, weights: readonly PairWeights[]): Told | null {
  const used = weights.filter(({ pair }) => swap.pairs.includes(pair));
  const evidence = used.flatMap(({ pair, of, inflation }) => {
    const found = of.get(set);
    return found === undefined ? [] : [{ pair, inflation, found }];
  });
  const { gap, rest } = withoutBest(
    evidence.flatMap(({ found, inflation }) => [
      ...found.parts.map((part) => part / inflation),
      ...found.others.map((other) => other.gap),
    ]),
  );
  return rest < LEFT_WITHOUT_BEST ? null : { swap, gap, evidence };
}

function bestOf(told: readonly Told[]): Told | null {
  const handicapped = ({ swap, gap }: Told) => gap - (swap.code === "diagonals_swapped" ? HANDICAP : 0);
  return told.reduce<Told | null>((top, each) => (top === null || handicapped(each) > handicapped(top) ? each : top), null);
}

function issueOf(set: FootSet, { swap, gap, evidence }: Told, limit: number, judged: number): Issue {
  const rows = swap.pairs.flat().flatMap((foot) => set.rows[foot] ?? []);
  const lines = rows.map(({ line }) => line).sort((a, b) => a - b);
  const measures = evidence
    .flatMap(({ pair, found }) => found.parts.map((part, place) => ({ pair, found, part, place })))
    .sort((a, b) => b.part - a.part)
    .slice(0, MEASURES_SHOWN)
    .filter(({ part }) => part > 0)
    .map(({ pair, found, place }) => contrastWords(pair, found, place));
  const seen = evidence.flatMap(({ pair, found }) =>
    found.others
      .filter((other) => other.gap > 1)
      .map(({ title }) => `${title} of ${pair.join(" and ")} fits the other way round`),
  );
  const pairs = swap.pairs.map((pair) => pair.join(" with ")).join(", ");
  return fabricIssue({
    file: rows[0]?.file ?? "visits.csv",
    line: lines[0] ?? null,
    column: "foot",
    code: swap.code,
    found:
      `${swap.words} of ${set.horseId} on ${set.visitDate} were probably exchanged (${pairs}): ` +
      [...measures, ...seen].join("; ") +
      `; the log-likelihood is better by ${gap.toFixed(1)} the other way round, where ${limit.toFixed(1)} is asked of ${judged} sets`,
    hint: `Look at the paper record of that day; if it is so, correct foot in lines ${lines.join(", ")}.`,
  });
}

function contrastWords([a, b]: FootPair, { contrast, expected }: PairSwap, place: number): string {
  const [measure, value, prediction] = [fabricMeasures[place], contrast[place] ?? null, expected[place] ?? null];
  if (measure === undefined || value === null || prediction === null) return "";
  const { title, unit } = measure;
  const usual = signedMeasure(prediction.history, unit);
  return `${title} ${a} less ${b} is ${signedMeasure(value, unit)} here and ${usual} on ${prediction.days} other days`;
}
