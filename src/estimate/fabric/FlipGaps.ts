/** How much better the readings of each row fit with their sign changed, as when two labels were swapped. */
export interface FlipGaps {
  /** Log-likelihood of the changed readings less that of the readings as they are. */
  readonly gap: readonly number[];
  /** Variance the gap has, whether swapped or not; its mean is half of it, below 0 when nothing was swapped. 0: nothing can be told. */
  readonly information: readonly number[];
  /** The part of the most telling measure, or group of measures, of the gap, at least 0. */
  readonly best: readonly number[];
}
