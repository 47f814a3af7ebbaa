/** Sums over groups of each column times `factors` (1 when left out): one stretch a group, one number a column. */
export function groupTotals(
  columns: readonly Float64Array[],
  index: Int32Array,
  count: number,
  factors?: Float64Array,
): Float64Array {
  const size = columns.length;
  const totals = new Float64Array(count * size);
  columns.forEach((column, j) => {
    for (let i = 0; i < column.length; i += 1)
      totals[index[i]! * size + j]! += factors === undefined ? column[i]! : column[i]! * factors[i]!;
  });
  return totals;
}
