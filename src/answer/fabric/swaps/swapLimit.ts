import { falseAlarmShare } from "../falseAlarmShare.js";

/**
 * The log-likelihood gap from which a swap is told: the logarithm of the number of comparisons over `falseAlarmShare`. A likelihood ratio
 * above c comes with probability 1 / c at most where nothing was swapped, so that so many comparisons give any false alarm with at most that
 * probability, if the likelihood is right.
 *
 * Source: Markov's inequality for likelihood ratios, and Bonferroni's.
 */
export function swapLimit(comparisons: number): number {
  return Math.log(Math.max(1, comparisons) / falseAlarmShare);
}
