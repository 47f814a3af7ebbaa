import type { ClassSums } from "./ClassSums.js";

/** Adds one row of a class to the sums; takes it out with `times` -1. The sums are changed. */
export function addRow({ counts, sums, products }: ClassSums, group: number, row: Float64Array, times: 1 | -1): void {
  const p = row.length;
  const sum = sums[group]!;
  counts[group]! += times;
  for (let j = 0; j < p; j += 1) {
    const value = times * row[j]!;
    sum[j]! += value;
    for (let k = 0; k < p; k += 1) products[j * p + k]! += value * row[k]!;
  }
}
