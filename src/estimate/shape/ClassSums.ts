/** Numbers, sums and cross-products of the rows of each class; rows can be taken out again. */
export interface ClassSums {
  readonly counts: Int32Array;
  /** Sums of the columns, one array a class. */
  readonly sums: readonly Float64Array[];
  /** Cross-products of all rows, p × p by rows. */
  readonly products: Float64Array;
}
