import type { Study } from "../study/Study.js";

/**
 * The day a review is made for: `asOf` of the settings, else the day of the last visit; null when there is neither.
 */
export function asOfDate(study: Pick<Study, "settings" | "visits">): string | null {
  if (study.settings.asOf !== null) return study.settings.asOf;
  let last: string | null = null;
  for (const { visitDate } of study.visits) if (last === null || visitDate > last) last = visitDate;
  return last;
}
