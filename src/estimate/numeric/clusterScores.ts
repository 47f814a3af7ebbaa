import { Matrix } from "ml-matrix";

/**
 * For each cluster the sum of its rows of the design times their residuals: one column a cluster, one row a coefficient. A times
 * its transpose, A being the inverse information times these, is a sandwich covariance whose diagonal cannot turn negative.
 * `index` gives each row's cluster, 0 .. `count` - 1.
 */
export function clusterScores(
  columns: readonly Float64Array[],
  residuals: Float64Array,
  { index, count }: { readonly index: Int32Array; readonly count: number },
): Matrix {
  return new Matrix(
    columns.map((column) => {
      const sums = new Float64Array(count);
      for (let i = 0; i < column.length; i += 1) sums[index[i]!]! += column[i]! * residuals[i]!;
      return sums;
    }),
  );
}
