/**
 * Cross-products of the columns of a design, the response last, with V^-1 between them, V being the variance over the residual
 * variance; and how they change with the parameters of V. Matrices are square, row after row.
 */
export interface MarginalMoments {
  readonly cross: Float64Array;
  readonly logDeterminant: number;
  /** Derivatives by each parameter. */
  readonly crossBy: readonly Float64Array[];
  readonly logDeterminantBy: Float64Array;
}

/** Moments as a function of the relative covariance parameters. */
export type MomentsAt = (theta: Float64Array) => MarginalMoments;
