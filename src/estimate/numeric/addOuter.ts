/**
 * Adds to a square matrix, row after row, `weight` times (a b' + b a') / 2, a and b being the stretches of length `size` from
 * `fromA` and `fromB` of two arrays.
 */
export function addOuter(
  matrix: Float64Array,
  size: number,
  weight: number,
  a: Float64Array,
  fromA: number,
  b: Float64Array,
  fromB: number,
): void {
  if (weight === 0) return;
  const half = weight / 2;
  for (let j = 0; j < size; j += 1) {
    for (let k = 0; k <= j; k += 1) {
      const value = half * (a[fromA + j]! * b[fromB + k]! + a[fromA + k]! * b[fromB + j]!);
      matrix[j * size + k]! += value;
      if (k < j) matrix[k * size + j]! += value;
    }
  }
}
