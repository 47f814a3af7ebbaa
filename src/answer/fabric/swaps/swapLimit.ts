/** A log-likelihood gap that a single suspicion would need: odds of 55 to 1. Common practice, no source. */
const SINGLE_GAP = 4;

/**
 * The log-likelihood gap from which a swap is told: 4, and the logarithm of the number of sets that were judged, since among n sets a gap of
 * ln n comes once by chance. A likelihood ratio above c comes with probability 1 / c at most where nothing was swapped, so that this many
 * sets give a false alarm on one kind of swap with probability exp(-4) = 0.018 at most.
 *
 * Source: Markov's inequality for likelihood ratios.
 */
export function swapLimit(setsJudged: number): number {
  return SINGLE_GAP + Math.log(Math.max(1, setsJudged));
}
