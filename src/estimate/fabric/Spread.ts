/** How one measure spreads in a herd; null when too little is known. */
export type Spread = {
  /** Mean of the subjects' means. */
  readonly mean: number;
  /** Variance of the subjects' true values about it. */
  readonly between: number;
  /** Variance of one reading about the true value of its subject: error of measurement and what changes from visit to visit. */
  readonly within: number;
} | null;
