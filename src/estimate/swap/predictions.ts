import type { Occasion } from "./Occasion.js";
import type { Prediction } from "./Prediction.js";
import type { Spread } from "./Spread.js";

/**
 * What each reading of one subject should be, from its readings on other days: one row an occasion, one column a measure.
 *
 * Method: the mean of the other days is drawn to the mean of the herd by the share between / (between + within / n), and the variance of a
 * reading about it is that of the reading and of the shrunken mean together (normal model with the herd's variances taken as known).
 * Readings of one day stand for one.
 *
 * Missing: null where the measure was read on fewer than `fewestDays` other days, or its spread is null.
 *
 * Source: best linear prediction, e.g. Robinson GK (1991) Stat Sci 6:15-32 (from memory).
 */
export function predictions(occasions: readonly Occasion[], spreads: readonly Spread[], fewestDays: number): Prediction[][] {
  const days = new Map<string, number>();
  const dayOf = occasions.map(({ day }) => {
    const place = days.get(day) ?? days.size;
    days.set(day, place);
    return place;
  });
  const rows: Prediction[][] = occasions.map(() => []);
  spreads.forEach((spread, measure) => {
    const means = dayMeans(occasions, dayOf, days.size, measure);
    const known = means.filter((mean) => mean !== null);
    const total = known.reduce((sum, mean) => sum + mean, 0);
    rows.forEach((row, place) => {
      const own = means[dayOf[place]!] ?? null;
      const others = known.length - (own === null ? 0 : 1);
      row.push(spread === null || others < fewestDays ? null : predicted(spread, (total - (own ?? 0)) / others, others));
    });
  });
  return rows;
}

function dayMeans(occasions: readonly Occasion[], dayOf: readonly number[], days: number, measure: number): (number | null)[] {
  const sums = new Float64Array(days);
  const counts = new Float64Array(days);
  occasions.forEach(({ values }, place) => {
    const value = values[measure] ?? null;
    if (value === null) return;
    sums[dayOf[place]!]! += value;
    counts[dayOf[place]!]! += 1;
  });
  return Array.from(sums, (sum, day) => (counts[day] === 0 ? null : sum / counts[day]!));
}

function predicted({ mean, between, within }: NonNullable<Spread>, history: number, days: number): Prediction {
  const share = between === 0 ? 0 : between / (between + within / days);
  return { expected: mean + share * (history - mean), variance: within + (share * within) / days, history, days };
}
