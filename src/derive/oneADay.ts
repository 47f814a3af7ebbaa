import type { GaugeDay } from "../study/GaugeDay.js";

/** A value of each date of one gauge; two rows of one date that differ are no value. @private */
export function oneADay(days: readonly GaugeDay[], valueOf: (row: GaugeDay) => number | null): (date: string) => number | null {
  const values = new Map<string, number | null>();
  for (const row of days) {
    const value = valueOf(row);
    const earlier = values.get(row.date);
    values.set(row.date, earlier === undefined || earlier === value ? value : null);
  }
  return (date) => values.get(date) ?? null;
}
