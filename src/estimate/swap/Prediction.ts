/** What one reading should be, judged by the other days of its subject; null when those are too few. */
export type Prediction = {
  readonly expected: number;
  /** Variance of a reading about it. */
  readonly variance: number;
  /** Plain mean of the other days. */
  readonly history: number;
  /** Days it rests on. */
  readonly days: number;
} | null;
