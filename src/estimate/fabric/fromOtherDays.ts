import type { Expectations } from "./Expectations.js";
import type { Readings } from "./Readings.js";
import type { Spread } from "./Spread.js";

/**
 * What each reading of a subject should be, from its readings on other days.
 *
 * Method: the mean of the other days is drawn to the mean of the herd by the share between / (between + within / n), and the variance of a
 * reading about it is that of the reading and of the shrunken mean together (normal model with the herd's variances taken as known).
 * Readings of one day stand for one.
 *
 * Missing: NaN where the measure was read on fewer than `fewestDays` other days, or its spread is null.
 *
 * Source: best linear prediction, e.g. Robinson GK (1991) Stat Sci 6:15-32 (from memory).
 */
export function fromOtherDays(readings: Readings, spreads: readonly Spread[], fewestDays: number): Expectations {
  const { columns, values, starts, days } = readings;
  const expected = new Array<number>(values.length).fill(NaN);
  const variance = new Array<number>(values.length).fill(NaN);
  const means: number[] = [];
  spreads.forEach((spread, column) => {
    if (spread === null) return;
    for (let subject = 0; subject + 1 < starts.length; subject++) {
      const [from, to] = [starts[subject] ?? 0, starts[subject + 1] ?? 0];
      if ((days[to - 1] ?? 0) < fewestDays) continue;
      fillDayMeans(readings, from, to, column, means);
      let [known, total] = [0, 0];
      for (let day = days[to - 1] ?? -1; day >= 0; day--) {
        const mean = means[day] ?? NaN;
        if (Number.isNaN(mean)) continue;
        known += 1;
        total += mean;
      }
      for (let row = from; row < to; row++) {
        const own = means[days[row] ?? 0] ?? NaN;
        const others = Number.isNaN(own) ? known : known - 1;
        if (others < fewestDays) continue;
        const history = (Number.isNaN(own) ? total : total - own) / others;
        const share = spread.between === 0 ? 0 : spread.between / (spread.between + spread.within / others);
        expected[row * columns + column] = spread.mean + share * (history - spread.mean);
        variance[row * columns + column] = spread.within + (share * spread.within) / others;
      }
    }
  });
  return { expected, variance };
}

/** Writes the mean of each day of a subject into `means`, NaN for a day on which the measure was not read. */
function fillDayMeans({ columns, values, days }: Readings, from: number, to: number, column: number, means: number[]): void {
  let [sum, count] = [0, 0];
  for (let row = from; row < to; row++) {
    const value = values[row * columns + column] ?? NaN;
    if (!Number.isNaN(value)) {
      sum += value;
      count += 1;
    }
    if (row + 1 < to && days[row + 1] === days[row]) continue;
    means[days[row] ?? 0] = count === 0 ? NaN : sum / count;
    sum = 0;
    count = 0;
  }
}
