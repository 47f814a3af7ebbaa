/** What each reading should be, judged by the other days of its subject; NaN where those are too few. */
export interface Expectations {
  /** Row by row, as the readings are. */
  readonly expected: readonly number[];
  /** Variance of a reading about it. */
  readonly variance: readonly number[];
}
