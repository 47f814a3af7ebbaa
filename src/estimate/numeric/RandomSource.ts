/** A stream of random numbers that is passed in, never global. The same seed gives the same stream on any machine. */
export interface RandomSource {
  /** Uniform, never 0 and never 1, in steps of 2^-52. */
  readonly uniform: () => number;
  /** Whole number from `low` to `high`, both included, all equally likely. */
  readonly integer: (low: number, high: number) => number;
  /** Normal with this mean (0) and standard deviation (1). */
  readonly normal: (mean?: number, sd?: number) => number;
  /** True with this probability. */
  readonly bernoulli: (probability: number) => boolean;
  /** Count with this mean. */
  readonly poisson: (mean: number) => number;
  /** One of the items, all equally likely. */
  readonly pick: <Item>(items: readonly Item[]) => Item;
  /**
   * A stream of its own under a name: drawing more from one stream does not move another. It depends on the seed and the names
   * only, not on how much has been drawn.
   */
  readonly stream: (name: string | number) => RandomSource;
}
