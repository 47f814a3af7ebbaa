/**
 * A clustered yes-or-no outcome in cells: `cases` of `n` feet alike in terms and weight. Clusters alike in every cell are kept once,
 * with the number of them in `copies`.
 */
export interface ClusteredBinomial {
  readonly columns: readonly Float64Array[];
  readonly cases: Float64Array;
  readonly n: Float64Array;
  /** Weight of each foot of a cell. */
  readonly weights: Float64Array;
  /** Cluster of each cell, and how many are kept. */
  readonly groups: { readonly index: Int32Array; readonly count: number };
  /** Feet in each cluster kept. */
  readonly sizes: Float64Array;
  /** How many clusters are like each one kept. */
  readonly copies: Float64Array;
}
