import { Matrix } from "ml-matrix";

/**
 * The middle of a sandwich covariance: the sum over clusters of s s', s being the sum of a cluster's rows of the design times
 * their residuals. `index` gives each row's cluster, 0 .. `count` - 1.
 */
export function clusterMeat(
  columns: readonly Float64Array[],
  residuals: Float64Array,
  { index, count }: { readonly index: Int32Array; readonly count: number },
): Matrix {
  const scores = columns.map((column) => {
    const sums = new Float64Array(count);
    for (let i = 0; i < column.length; i += 1) sums[index[i]!]! += column[i]! * residuals[i]!;
    return sums;
  });
  const rows = new Matrix(scores);
  return rows.mmul(rows.transpose());
}
