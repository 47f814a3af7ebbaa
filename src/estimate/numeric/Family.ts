/**
 * A distribution with its canonical link, as the iteration needs it. `y` is a total over `m` units: cases among m feet, events in m
 * rows of one kind; `eta` is the linear predictor of one unit.
 */
export interface Family {
  /** Mean of one unit. */
  readonly mean: (eta: number) => number;
  /** Variance of one unit, which for a canonical link is also the slope of the mean. */
  readonly variance: (eta: number) => number;
  /**
   * For every row the weight, m variance, and the residual, y - m mean, without cancellation where the mean is next to its bound; and
   * the deviance, twice the log likelihood lost against a fit exact in every row, as return value.
   */
  readonly evaluate: (
    y: Float64Array,
    m: Float64Array,
    eta: Float64Array,
    weights: Float64Array,
    residuals: Float64Array,
  ) => number;
  /** Linear predictor to start from. */
  readonly start: (y: number, m: number) => number;
  /** The largest total that m units can give: m for a proportion, infinite for a count. */
  readonly most: (m: number) => number;
}
