/**
 * A distribution with its canonical link, as the iteration needs it. `y` is a total over `m` units: cases among m feet, events in m
 * rows of one kind; `eta` is the linear predictor of one unit.
 */
export interface Family {
  /** Mean of one unit. */
  readonly mean: (eta: number) => number;
  /** Variance of one unit, which for a canonical link is also the slope of the mean. */
  readonly variance: (eta: number) => number;
  /** y - m mean, without cancellation where the mean is next to its bound. */
  readonly residual: (y: number, m: number, eta: number) => number;
  /** Twice the log likelihood lost against a fit that is exact in this row. */
  readonly deviance: (y: number, m: number, eta: number) => number;
  /** Linear predictor to start from. */
  readonly start: (y: number, m: number) => number;
  /** The largest total that m units can give: m for a proportion, infinite for a count. */
  readonly most: (m: number) => number;
}
