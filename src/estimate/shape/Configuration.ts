/** A set of landmarks centred on its own mean and divided by its centroid size. */
export interface Configuration {
  /** x and y of each landmark in turn; the sum of squares is 1. */
  readonly unit: Float64Array;
  readonly meanX: number;
  readonly meanY: number;
  /** Root of the sum of squared distances from the mean. */
  readonly size: number;
}
