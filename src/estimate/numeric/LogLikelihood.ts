/**
 * A log-likelihood with its gradient: returns the value at `theta` and writes the gradient into `gradient`. Minus infinity
 * where it cannot be computed; the gradient is then left alone.
 */
export type LogLikelihood = (theta: Float64Array, gradient: Float64Array) => number;
