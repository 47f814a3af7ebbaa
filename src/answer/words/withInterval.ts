import { levelText } from "../../chart/parts/levelText.js";

/**
 * An estimate with its interval, written by `text`: `2.4 (95% interval 1.9 to 3.0)`; the limits by `limit` where they are written
 * otherwise, as without their unit. Without limits it says that there is no interval.
 */
export function withInterval(
  of: { readonly estimate: number; readonly lower: number | null; readonly upper: number | null; readonly level: number },
  text: (value: number) => string,
  limit = text,
): string {
  if (of.lower === null || of.upper === null) return `${text(of.estimate)} (too little for an interval)`;
  return `${text(of.estimate)} (${levelText(of.level)} interval ${limit(of.lower)} to ${limit(of.upper)})`;
}
