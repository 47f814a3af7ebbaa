const DAY_MS = 86_400_000;

/**
 * Days since 1970-01-01 of a calendar date `YYYY-MM-DD`; null when the text is not a real date of the years 1000-9999.
 * Counted in UTC, so that clock changes and the time zone of the machine cannot shift a day.
 */
export function dayNumber(date: string): number | null {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date);
  if (parts === null) return null;
  const [year, month, day] = [Number(parts[1]), Number(parts[2]), Number(parts[3])];
  const time = Date.UTC(year, month - 1, day);
  const back = new Date(time);
  const real = year >= 1000 && back.getUTCMonth() === month - 1 && back.getUTCDate() === day;
  return real ? time / DAY_MS : null;
}
