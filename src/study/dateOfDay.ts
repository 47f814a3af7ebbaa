/** Calendar date `YYYY-MM-DD` of a day number as made by `dayNumber`. */
export function dateOfDay(day: number): string {
  return new Date(day * 86_400_000).toISOString().slice(0, 10);
}
