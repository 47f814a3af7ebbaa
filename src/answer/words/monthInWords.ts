import { longDate } from "./longDate.js";

/** A month `YYYY-MM` as people say it: `March 2026`. */
export function monthInWords(month: string): string {
  return longDate(`${month}-01`).slice(2);
}
