/**
 * Counts of cases for a model with nested groups, laid out for tight loops. A cell is a set of rows of one inner group with
 * equal terms. Inner groups of one outer group that are alike in every cell have the same likelihood and stand there once, with
 * the number of `copies`. Cells of an inner group stand together, inner groups of an outer group stand together.
 */
export interface NestedCounts {
  /** Columns of `x`, the intercept included. */
  readonly terms: number;
  readonly cells: number;
  /** Inner groups that are laid out: those that differ. */
  readonly inner: number;
  readonly outer: number;
  /** Terms, cell after cell. */
  readonly x: Float64Array;
  readonly cases: Float64Array;
  readonly n: Float64Array;
  /** First cell of each inner group, and one past the last. */
  readonly innerStart: Int32Array;
  /** First inner group of each outer group, and one past the last. */
  readonly outerStart: Int32Array;
  /** How many inner groups each one laid out stands for. */
  readonly copies: Float64Array;
  /** For each inner group as numbered by the caller, where it is laid out. */
  readonly placeOf: Int32Array;
  /** Sum over rows of the logarithms of the binomial coefficients: the part of the log-likelihood no parameter touches. */
  readonly constant: number;
}
