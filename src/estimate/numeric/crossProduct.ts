/** Cross-products of columns with each other: a square matrix, row after row. */
export function crossProduct(columns: readonly Float64Array[]): Float64Array {
  const size = columns.length;
  const matrix = new Float64Array(size * size);
  columns.forEach((a, j) => {
    columns.slice(0, j + 1).forEach((b, k) => {
      let sum = 0;
      for (let i = 0; i < a.length; i += 1) sum += a[i]! * b[i]!;
      matrix[j * size + k] = sum;
      matrix[k * size + j] = sum;
    });
  });
  return matrix;
}
