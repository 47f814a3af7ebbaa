/** Columns times coefficients, plus the offset where there is one: one number a row. */
export function linearPredictor(
  columns: readonly Float64Array[],
  coefficients: ArrayLike<number>,
  offset?: Float64Array,
): Float64Array {
  const n = columns[0]?.length ?? 0;
  const sums = offset === undefined ? new Float64Array(n) : offset.slice();
  columns.forEach((column, j) => {
    const coefficient = coefficients[j]!;
    for (let i = 0; i < n; i += 1) sums[i]! += column[i]! * coefficient;
  });
  return sums;
}
