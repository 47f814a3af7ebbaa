/** An odds ratio of a curve: limits that hold this point alone, and limits that hold the whole curve. */
export interface RatioBand {
  readonly estimate: number;
  /** Pointwise. */
  readonly lower: number;
  readonly upper: number;
  /** Simultaneous: the whole curve lies within them as often as the level says. */
  readonly lowerTogether: number;
  readonly upperTogether: number;
}
