/**
 * For each column the sums over clusters of its entries times `factors`: one array a column, one number a cluster. `index` gives
 * each row's cluster, 0 .. `count` - 1.
 *
 * With residuals for factors they are the scores of a linear or canonical model.
 */
export function clusterSums(
  columns: readonly Float64Array[],
  factors: Float64Array,
  { index, count }: { readonly index: Int32Array; readonly count: number },
): Float64Array[] {
  return columns.map((column) => {
    const sums = new Float64Array(count);
    for (let i = 0; i < column.length; i += 1) sums[index[i]!]! += column[i]! * factors[i]!;
    return sums;
  });
}
