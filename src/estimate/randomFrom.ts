import type { RandomSource } from "./numeric/RandomSource.js";
import { seededRandom } from "./numeric/seededRandom.js";

/** A stream of random numbers, as estimates that draw samples are given one: `uniform`, `normal`, `pick` and so on, and `stream` for another by name. */
export type RandomStream = RandomSource;

/**
 * Random numbers from a seed, for estimates that draw samples (`attributableFraction`, `clusterBootstrap`, `lagProfile`): the same seed gives
 * the same limits on any machine. Give each estimate a stream of its own.
 *
 * Errors: those of the draws; none for the seed, which may be any text or number.
 *
 * Source: Blackman D, Vigna S (2021) ACM Trans Math Softw 47:36 (xoshiro128**).
 */
export function randomFrom(seed: string | number): RandomStream {
  return seededRandom(seed);
}
