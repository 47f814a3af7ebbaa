/** How much better readings fit with their sign changed, as when two labels were swapped. */
export interface SignFlip {
  /** Log-likelihood of the changed readings less that of the readings as they are. */
  readonly gap: number;
  /** Variance the gap has, whether swapped or not; its mean is half of it, below 0 when nothing was swapped. 0: nothing can be told. */
  readonly information: number;
  /** The part of each measure in the gap. */
  readonly parts: readonly number[];
}
