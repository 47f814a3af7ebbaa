import { dayNumber } from "../study/dayNumber.js";
import { EstimateError } from "./EstimateError.js";
import { requireCount } from "./numeric/requireCount.js";

/** Days that one visit is good for. */
export interface CoveredPeriod {
  /** First day covered, `YYYY-MM-DD`: the day of the visit itself. */
  readonly start: string;
  /** Days covered, the first included; null when no interval was agreed. */
  readonly days: number | null;
}

/** How much of a window of days one horse was covered. */
export interface DaysCovered {
  /** Days of the window that at least one period covers. */
  readonly covered: number;
  /** Days of the window. */
  readonly windowDays: number;
  /** `covered` over `windowDays`, 0 to 1. */
  readonly proportion: number;
  /** Days of all periods that start in the window over `windowDays`: may pass 1, for overlaps and days after the window count. */
  readonly supplyRatio: number;
  /** Periods used: those that start no later than the window ends. */
  readonly periods: number;
  /** Periods left out because their days are not known; above 0, `covered` may be too low. */
  readonly missing: number;
  readonly method: string;
}

/**
 * Proportion of days covered: how many days from `first` to `last` (both included) lie within the days that some visit is good for.
 * For one horse; for several, give `covered` and `windowDays` of each to `clusteredProportion` as cases and n.
 *
 * Method: a period covers the days `start`, start + 1, … start + days - 1. A day in two periods counts once. With `shift` false
 * (the default) a new visit restarts the clock: what was left of the period before is lost, which suits a trim, for days until the
 * next one do not add up (a choice of this project, no source). With `shift` true a period that starts before the one before it has
 * run out is moved to the day after, as is done with packs of tablets. A period may start before the window.
 *
 * Missing: periods whose `days` are null are left out and counted in `missing`. Without a period 0 days are covered.
 *
 * Errors: `not_a_date` for a day that is none; `not_a_number` or `not_a_count` for days that are no count; `out_of_range` for a
 * window that ends before it begins.
 *
 * Source: no paper with the equation was found; the definition, with early supplies carried forward, is the one described in the
 * manual of the R package adheRenceRX (functions calculate_pdc and propagate_date), which cites Canfield SL et al. (2019) J Manag
 * Care Spec Pharm 25:1073-1077.
 */
export function daysCovered(
  periods: readonly CoveredPeriod[],
  window: { readonly first: string; readonly last: string },
  options: { readonly shift?: boolean } = {},
): DaysCovered {
  const { shift = false } = options;
  const [first, last] = [dayOf("first day of the window", window.first), dayOf("last day of the window", window.last)];
  if (last < first) {
    throw new EstimateError(
      "out_of_range",
      `The window ends on ${window.last}, before it begins on ${window.first}.`,
      "Give the earlier day as first.",
    );
  }
  const known = periods.flatMap(({ start, days }) =>
    days === null ? [] : [{ start: dayOf("start of a period", start), days: requireCount("days of a period", days) }],
  );
  const used = known.filter(({ start }) => start <= last).sort((a, b) => a.start - b.start);
  let covered = 0;
  let supplied = 0;
  // First day that no period so far has covered.
  let next = -Infinity;
  for (const { start, days } of used) {
    const from = shift ? Math.max(start, next) : start;
    covered += Math.max(0, Math.min(from + days - 1, last) - Math.max(from, next, first) + 1);
    next = Math.max(next, from + days);
    if (start >= first) supplied += days;
  }
  const windowDays = last - first + 1;
  return {
    covered,
    windowDays,
    proportion: covered / windowDays,
    supplyRatio: supplied / windowDays,
    periods: used.length,
    missing: periods.length - known.length,
    method: `Proportion of days covered, ${shift ? "early periods moved to the end of the one before" : "each period restarts the clock"}`,
  };
}

function dayOf(name: string, date: string): number {
  const day = dayNumber(date);
  if (day !== null) return day;
  throw new EstimateError("not_a_date", `Found "${date}" as ${name}; it is no calendar day.`, "Write dates as YYYY-MM-DD.");
}
