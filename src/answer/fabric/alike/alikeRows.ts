import { fabricMeasures } from "../../../derive/fabric/fabricMeasures.js";
import { poissonBinomialUpper } from "../../../estimate/numeric/poissonBinomialUpper.js";
import type { RowPairs } from "./RowPairs.js";

/** How alike the rows of one comparison are. */
export interface AlikeRows<Pairs extends RowPairs> {
  readonly of: Pairs;
  /** Measures that both rows have, over all pairs. */
  readonly compared: number;
  readonly equal: number;
  /** Chance of so many equal ones or more, were they read anew. */
  readonly p: number;
}

/** Fewer measures are alike by chance too often to say anything. */
const FEWEST_MEASURES = 6;
/** Whoever copies may change a cell or two. */
const SHARE_EQUAL = 0.9;
/** Expected false alarms in a whole study, at most. */
const FALSE_ALARMS = 0.01;
/** An observer's own share of equal readings is drawn to that of all by so many readings. */
const DRAWN_BY = 50;

/**
 * Comparisons of which at least nine tenths of six or more measures are equal, although that comes by chance once in a hundred studies at most.
 *
 * Method: each measure has its own chance of being read the same twice, the share of equal readings of that observer, drawn to that of
 * all observers by fifty readings; comparisons that are equal throughout are left out of the shares, so that copies do not vouch for each
 * other. The chance of so many equal ones is Poisson-binomial, times the number of comparisons (Bonferroni).
 *
 * Missing: a measure counts where both rows have it.
 *
 * Source: own; thresholds common practice, no source.
 */
export function alikeRows<Pairs extends RowPairs>(comparisons: readonly Pairs[]): AlikeRows<Pairs>[] {
  const counted = comparisons
    .map((of) => ({ of, measures: fabricMeasures.map((_, place) => countsOf(of, place)) }))
    .map((each) => ({ ...each, compared: total(each.measures, "compared"), equal: total(each.measures, "equal") }))
    .filter(({ compared }) => compared > 0);
  const ordinary = counted.filter(({ compared, equal }) => equal < compared || compared < FEWEST_MEASURES);
  const all = fabricMeasures.map(() => ({ compared: 0, equal: 0 }));
  const observers = new Map<string, { compared: number; equal: number }[]>();
  for (const { of, measures } of ordinary) {
    const own = observers.get(of.observerId ?? "") ?? fabricMeasures.map(() => ({ compared: 0, equal: 0 }));
    observers.set(of.observerId ?? "", own);
    measures.forEach(({ compared, equal }, place) => {
      for (const sum of [all[place], own[place]]) {
        if (sum === undefined) continue;
        sum.compared += compared;
        sum.equal += equal;
      }
    });
  }
  const chance = (observerId: string | null, place: number): number => {
    const [every, own] = [all[place], observers.get(observerId ?? "")?.[place]];
    // One equal reading more than seen, so that nothing is impossible.
    const usual = ((every?.equal ?? 0) + 1) / ((every?.compared ?? 0) + 2);
    return ((own?.equal ?? 0) + DRAWN_BY * usual) / ((own?.compared ?? 0) + DRAWN_BY);
  };
  const judged = counted.filter(({ compared }) => compared >= FEWEST_MEASURES);
  return judged.flatMap(({ of, measures, compared, equal }) => {
    if (equal < SHARE_EQUAL * compared) return [];
    const chances = measures.flatMap((count, place) =>
      Array.from({ length: count.compared }, () => chance(of.observerId, place)),
    );
    const p = poissonBinomialUpper(equal, chances);
    return p * judged.length > FALSE_ALARMS ? [] : [{ of, compared, equal, p }];
  });
}

function countsOf({ pairs }: RowPairs, place: number): { readonly compared: number; readonly equal: number } {
  const field = fabricMeasures[place]?.field;
  if (field === undefined) return { compared: 0, equal: 0 };
  const both = pairs.filter(([a, b]) => a[field] !== null && b[field] !== null);
  return { compared: both.length, equal: both.filter(([a, b]) => a[field] === b[field]).length };
}

function total(counts: readonly { readonly compared: number; readonly equal: number }[], of: "compared" | "equal"): number {
  return counts.reduce((sum, count) => sum + count[of], 0);
}
