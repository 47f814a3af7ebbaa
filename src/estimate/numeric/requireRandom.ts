import { EstimateError } from "../EstimateError.js";
import type { RandomSource } from "./RandomSource.js";

/**
 * The source of random numbers itself: a check of what a compiler without strict settings lets through.
 *
 * Errors: `empty` when there is none.
 */
export function requireRandom(random: RandomSource): RandomSource {
  if (typeof (random as RandomSource | undefined)?.pick === "function") return random;
  throw new EstimateError(
    "empty",
    "There is no source of random numbers to draw samples with.",
    'Give one with a seed: random: randomFrom("my study").',
  );
}
