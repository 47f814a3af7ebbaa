/** A ratio and its limits: an odds ratio or a rate ratio, the exponential of a coefficient. */
export interface RatioInterval {
  readonly estimate: number;
  readonly lower: number;
  readonly upper: number;
}
