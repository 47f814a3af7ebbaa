import { betaCumulative } from "./numeric/betaCumulative.js";
import { findRoot } from "./numeric/findRoot.js";
import { requireCases } from "./numeric/requireCases.js";
import { requireLevel } from "./numeric/requireLevel.js";
import type { ProportionInterval } from "./ProportionInterval.js";

/**
 * Mid-P exact interval of a proportion: `cases` of `n` independent things. Narrower than Clopper-Pearson; it covers the truth
 * about as often as the level says, sometimes a little less.
 *
 * Method: as Clopper-Pearson, but only half the probability of the count seen belongs to each tail. Both limits are found as
 * roots, and moved to the proportion itself in the rare case (very low levels) that it lies outside them.
 *
 * Missing: whoever counts leaves the missing out of `n` and says how many there were.
 *
 * Errors: `not_a_number`, `not_a_count`; `empty` for 0 of 0; `out_of_range` for more cases than `n` or a level not between 0
 * and 1.
 *
 * Source: Lancaster HO (1961) J Am Stat Assoc 56:223-234; Newcombe RG (1998) Stat Med 17:857-872, method 6.
 */
export function midPInterval(cases: number, n: number, options: { readonly level?: number } = {}): ProportionInterval {
  const { level = 0.95 } = options;
  requireCases(cases, n);
  const tail = (1 - requireLevel(level)) / 2;
  const estimate = cases / n;
  const lower = cases === 0 ? 0 : lowerLimit(cases, n, tail);
  const upper = cases === n ? 1 : 1 - lowerLimit(n - cases, n, tail);
  return {
    estimate,
    lower: Math.min(lower, estimate),
    upper: Math.max(upper, estimate),
    level,
    cases,
    n,
    method: "Mid-P exact interval",
    note: null,
  };
}

/** Proportion at which P(X > cases) + P(X = cases) / 2 is `tail`. */
function lowerLimit(cases: number, n: number, tail: number): number {
  const above = (p: number): number =>
    (betaCumulative(p, cases, n - cases + 1) + (cases === n ? 0 : betaCumulative(p, cases + 1, n - cases))) / 2;
  return findRoot((p) => above(p) - tail, 0, 1);
}
