import { grouped } from "../study/grouped.js";
import { EstimateError } from "./EstimateError.js";
import type { RandomSource } from "./numeric/RandomSource.js";
import { requireCount } from "./numeric/requireCount.js";
import type { Point } from "./Point.js";
import type { Points } from "./Points.js";
import { configured } from "./shape/configured.js";
import { landmarksOf } from "./shape/landmarksOf.js";
import { requireSameLandmarks } from "./shape/requireSameLandmarks.js";
import { superimposed } from "./shape/superimposed.js";

/** Two shapes that belong together: the front and the hind foot of one side, the same foot before and after. */
export interface ShapePair {
  readonly first: Points;
  readonly second: Points;
  /** The horse; pairs of one horse are swapped together. Each pair is its own when left out. */
  readonly cluster?: string | number;
}

/** Whether two kinds of shape differ, tested within horses. */
export interface ShapeDifference {
  /** Distance of the mean shapes, at size 1. It is never 0: see `chanceDistance`. */
  readonly distance: number;
  /** Mean distance over the swaps: what would be seen without any difference. */
  readonly chanceDistance: number;
  /** Chance of a distance as large when first and second are interchangeable within horses. */
  readonly p: number;
  /** Swaps whose distance was at least as large. */
  readonly atLeast: number;
  readonly permutations: number;
  readonly pairs: number;
  /** Horses: the unit of the test. */
  readonly clusters: number;
  readonly meanFirst: readonly Point[];
  readonly meanSecond: readonly Point[];
  /** Second less first, by landmark. */
  readonly difference: readonly Point[];
  readonly method: string;
  readonly note: string | null;
}

/**
 * Difference between two mean shapes, front against hind, from pairs within horses, with a permutation test.
 *
 * Method: all shapes are superimposed together (`generalProcrustes`). The difference of each pair is averaged within its horse, and
 * these over horses, so that every horse counts once; `distance` is the length of that mean. For the test first and second are swapped
 * at random within each horse, all its pairs together; p = (1 + swaps at least as far) / (1 + swaps). What horses share, size
 * and breed among it, cancels. Landmarks must correspond; mirror left feet before.
 *
 * Errors (`EstimateError`): `too_few` for fewer than two horses or fewer than 99 swaps; `not_a_count`; `length_mismatch`;
 * `not_a_number`; `no_variation`; `not_converged`.
 *
 * Source: Good P (2000) Permutation Tests, 2nd ed., paired comparisons; Phipson B, Smyth GK (2010) Stat Appl Genet Mol Biol 9:39,
 * for p.
 */
export function shapeDifference(
  pairs: readonly ShapePair[],
  options: { readonly random: RandomSource; readonly permutations?: number },
): ShapeDifference {
  const permutations = requireCount("number of swaps", options.permutations ?? 999);
  if (permutations < 99) throw new EstimateError("too_few", `${permutations} swaps are too few.`, "Ask for 99 or more.");
  const horses = [...grouped(pairs.keys(), (i) => pairs[i]!.cluster ?? { pair: i }).values()];
  const k = horses.length;
  if (k < 2) {
    throw new EstimateError("too_few", `There are pairs of ${k} horses; two or more are needed.`, "Give pairs of more horses.");
  }
  const shapes = pairs.flatMap(({ first, second }) => [first, second]);
  requireSameLandmarks(shapes, 4);
  const { aligned } = superimposed(shapes.map((shape, i) => configured(shape, `shape ${i + 1}`).unit));
  const firsts = horses.map((places) => meanOf(places.map((i) => aligned[2 * i]!)));
  const seconds = horses.map((places) => meanOf(places.map((i) => aligned[2 * i + 1]!)));
  const differences = seconds.map((second, h) => second.map((value, j) => value - firsts[h]![j]!));
  const difference = meanOf(differences);
  const distance = lengthOf(difference);
  const sum = new Float64Array(difference.length);
  let [atLeast, total] = [0, 0];
  for (let turn = 0; turn < permutations; turn += 1) {
    sum.fill(0);
    for (const values of differences) {
      const sign = options.random.bernoulli(0.5) ? 1 : -1;
      for (let j = 0; j < sum.length; j += 1) sum[j]! += sign * values[j]!;
    }
    const far = lengthOf(sum) / k;
    total += far;
    // Swapping every horse gives the same distance but for rounding.
    if (far >= distance * (1 - 1e-12)) atLeast += 1;
  }
  return {
    distance,
    chanceDistance: total / permutations,
    p: (1 + atLeast) / (1 + permutations),
    atLeast,
    permutations,
    pairs: pairs.length,
    clusters: k,
    meanFirst: landmarksOf(meanOf(firsts)),
    meanSecond: landmarksOf(meanOf(seconds)),
    difference: landmarksOf(difference),
    method: `Permutation test of the distance between mean shapes, ${permutations} random swaps within ${k} horses`,
    note:
      k < 8
        ? `${k} horses can be swapped in only ${2 ** (k - 1)} different ways, so no p much below ${Number((1 / 2 ** (k - 1)).toPrecision(2))} can be seen.`
        : null,
  };
}

function meanOf(vectors: readonly Float64Array[]): Float64Array {
  const mean = new Float64Array(vectors[0]!.length);
  for (const vector of vectors) for (let j = 0; j < mean.length; j += 1) mean[j]! += vector[j]!;
  return mean.map((value) => value / vectors.length);
}

function lengthOf(vector: Float64Array): number {
  return Math.sqrt(vector.reduce((sum, value) => sum + value * value, 0));
}
