/** A chi-square test; null where the data leave nothing to test. */
export interface ChiSquareTest {
  readonly statistic: number | null;
  readonly df: number;
  /** Probability of a statistic at least as large when there is no difference. */
  readonly p: number | null;
}
