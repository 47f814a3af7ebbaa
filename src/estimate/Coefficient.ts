/** One coefficient of a regression, on the scale the model is linear in. */
export interface Coefficient {
  readonly name: string;
  readonly estimate: number;
  readonly se: number;
  readonly lower: number;
  readonly upper: number;
  /** Estimate over standard error: t or z, as the method says; null when the standard error is 0. */
  readonly statistic: number | null;
  /** Degrees of freedom of t; null for z. */
  readonly df: number | null;
  /** Two-sided, of no effect; null when the standard error is 0. */
  readonly p: number | null;
}
