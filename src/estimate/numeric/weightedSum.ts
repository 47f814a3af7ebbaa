/** Sum of the values, each times its weight. */
export function weightedSum(values: Float64Array, weights: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < values.length; i += 1) sum += values[i]! * weights[i]!;
  return sum;
}
