import { fabricMeasures } from "../../../derive/fabric/fabricMeasures.js";
import type { StandingFoot } from "../../../derive/fabric/FootSet.js";
import type { FootTable } from "../../../derive/fabric/FootTable.js";
import { standingFeet } from "../../../derive/fabric/standingFeet.js";
import { poissonBinomialUpper } from "../../../estimate/numeric/poissonBinomialUpper.js";
import { falseAlarmShare } from "../falseAlarmShare.js";
import type { AlikePair } from "./AlikePair.js";

/** Fewer measures are alike by chance too often to say anything. */
const FEWEST_MEASURES = 6;
/** Whoever copies may change a cell or two. */
const SHARE_EQUAL = 0.9;
/** An observer's own share of equal readings is drawn to that of all by so many readings. */
const DRAWN_BY = 50;
const MEASURES = fabricMeasures.length;

/**
 * Pairs of sets, by their places in the table, of which at least nine tenths of six or more measures are equal, although that comes by chance in
 * few studies (`falseAlarmShare`). `feet` says which foot of the first set is held against which of the second; both may be one set.
 *
 * Method: each measure has its own chance of being read the same twice, the share of equal readings of that observer, drawn to that of
 * all observers by fifty readings; comparisons that are equal throughout are left out of the shares, so that copies do not vouch for each
 * other. The chance of so many equal ones is Poisson-binomial, times the number of comparisons (Bonferroni).
 *
 * Missing: a measure counts where both feet have it.
 *
 * Source: own; thresholds common practice, no source.
 */
export function alikeSets(
  table: FootTable,
  pairs: readonly (readonly [before: number, now: number])[],
  feet: readonly (readonly [StandingFoot, StandingFoot])[],
): AlikePair[] {
  const places = feet.map(([a, b]) => [standingFeet.indexOf(a), standingFeet.indexOf(b)] as const);
  const counts = pairs.map(([before, now]) => countsOf(table.values, before, now, places));
  const all = new Float64Array(2 * MEASURES);
  const observers = new Map<string, Float64Array>();
  pairs.forEach(([, now], at) => {
    const count = counts[at];
    if (count === undefined || isWhole(count)) return;
    const name = table.sets[now]?.observerId ?? "";
    let own = observers.get(name);
    if (own === undefined) observers.set(name, (own = new Float64Array(2 * MEASURES)));
    for (let place = 0; place < 2 * MEASURES; place++) {
      all[place] = (all[place] ?? 0) + (count[place] ?? 0);
      own[place] = (own[place] ?? 0) + (count[place] ?? 0);
    }
  });
  const chance = (observerId: string | null, measure: number): number => {
    const own = observers.get(observerId ?? "");
    // One equal reading more than seen, so that nothing is impossible.
    const usual = ((all[MEASURES + measure] ?? 0) + 1) / ((all[measure] ?? 0) + 2);
    return ((own?.[MEASURES + measure] ?? 0) + DRAWN_BY * usual) / ((own?.[measure] ?? 0) + DRAWN_BY);
  };
  const judged = counts.filter((count) => comparedIn(count) >= FEWEST_MEASURES).length;
  return pairs.flatMap(([before, now], at): AlikePair[] => {
    const count = counts[at];
    if (count === undefined) return [];
    const [compared, equal] = [comparedIn(count), equalIn(count)];
    if (compared < FEWEST_MEASURES || equal < SHARE_EQUAL * compared) return [];
    const observerId = table.sets[now]?.observerId ?? null;
    const chances = fabricMeasures.flatMap((_, measure) =>
      Array.from({ length: count[measure] ?? 0 }, () => chance(observerId, measure)),
    );
    const p = poissonBinomialUpper(equal, chances);
    return p * judged > falseAlarmShare ? [] : [{ before, now, compared, equal, p }];
  });
}

/** For each measure on how many pairs of feet both have it, and after these on how many it is equal. */
function countsOf(values: Float64Array, before: number, now: number, feet: readonly (readonly [number, number])[]): Uint8Array {
  const counts = new Uint8Array(2 * MEASURES);
  for (const [a, b] of feet) {
    const [first, second] = [(before * standingFeet.length + a) * MEASURES, (now * standingFeet.length + b) * MEASURES];
    for (let measure = 0; measure < MEASURES; measure++) {
      const [x, y] = [values[first + measure] ?? NaN, values[second + measure] ?? NaN];
      if (Number.isNaN(x) || Number.isNaN(y)) continue;
      counts[measure] = (counts[measure] ?? 0) + 1;
      if (x === y) counts[MEASURES + measure] = (counts[MEASURES + measure] ?? 0) + 1;
    }
  }
  return counts;
}

function comparedIn(counts: Uint8Array): number {
  let sum = 0;
  for (let measure = 0; measure < MEASURES; measure++) sum += counts[measure] ?? 0;
  return sum;
}

function equalIn(counts: Uint8Array): number {
  let sum = 0;
  for (let measure = 0; measure < MEASURES; measure++) sum += counts[MEASURES + measure] ?? 0;
  return sum;
}

function isWhole(counts: Uint8Array): boolean {
  const compared = comparedIn(counts);
  return compared >= FEWEST_MEASURES && equalIn(counts) === compared;
}
