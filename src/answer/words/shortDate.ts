import { longDate } from "./longDate.js";

/** A calendar date `YYYY-MM-DD` for a table: `5 Mar 2026`. */
export function shortDate(date: string): string {
  return longDate(date).replace(/[a-z]+(?= )/i, (month) => month.slice(0, 3));
}
