/** How much the log odds differ between groups of one kind: the standard deviation of a random intercept. */
export interface RandomIntercept {
  readonly name: string;
  /** Groups in the rows used. */
  readonly count: number;
  /** Standard deviation on the log-odds scale. */
  readonly sd: number;
  /** Standard error of the logarithm of `sd`; null when `sd` is 0. */
  readonly seLogSd: number | null;
  /** Wald limits on the log scale; null when `sd` is 0. */
  readonly lower: number | null;
  readonly upper: number | null;
  /** Whether the likelihood is highest with no difference at all between these groups. */
  readonly boundary: boolean;
  /**
   * Intraclass correlation on the latent scale of two observations that share this group and the ones around it: their variances
   * over all variances and pi^2 / 3.
   */
  readonly icc: number;
  /**
   * Median odds ratio: of two groups of this kind that are alike in all terms and share the groups around them, the median odds
   * ratio between the worse and the better.
   */
  readonly medianOddsRatio: number;
  readonly note: string | null;
}
