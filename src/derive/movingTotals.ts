/** Totals over the `windowDays` values that end at each place; null when one of them is, and before there are that many. Counts only: sums must be exact. @private */
export function movingTotals(values: readonly (number | null)[], windowDays: number): (number | null)[] {
  let [sum, missing] = [0, 0];
  return values.map((value, place) => {
    sum += value ?? 0;
    missing += value === null ? 1 : 0;
    const gone = place < windowDays ? 0 : (values[place - windowDays] ?? null);
    sum -= gone ?? 0;
    missing -= gone === null ? 1 : 0;
    return missing > 0 || place + 1 < windowDays ? null : sum;
  });
}
