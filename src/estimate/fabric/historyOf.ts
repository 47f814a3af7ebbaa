import type { Readings } from "./Readings.js";

/** Mean of one measure of a row's subject over its other days, and their number; a day with several readings counts each of them. */
export function historyOf({ columns, values, starts, days }: Readings, row: number, column: number) {
  let subject = 0;
  while ((starts[subject + 1] ?? Infinity) <= row) subject += 1;
  const others = new Set<number>();
  let [sum, count] = [0, 0];
  for (let other = starts[subject] ?? 0; other < (starts[subject + 1] ?? 0); other++) {
    const value = values[other * columns + column] ?? NaN;
    if (days[other] === days[row] || Number.isNaN(value)) continue;
    sum += value;
    count += 1;
    others.add(days[other] ?? 0);
  }
  return { mean: sum / count, days: others.size };
}
