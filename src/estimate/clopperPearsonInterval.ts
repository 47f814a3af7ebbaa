import { betaQuantile } from "./numeric/betaQuantile.js";
import { requireCases } from "./numeric/requireCases.js";
import { requireLevel } from "./numeric/requireLevel.js";
import type { ProportionInterval } from "./ProportionInterval.js";

/**
 * Exact (Clopper-Pearson) interval of a proportion: `cases` of `n` independent things. It covers the truth at least as often
 * as the level says and is wider than it need be.
 *
 * Method: each limit is the proportion under which a count as far out as the one seen has probability (1 - level) / 2; both
 * are quantiles of beta distributions. With 0 cases the upper limit is 1 - ((1 - level) / 2)^(1/n).
 *
 * Missing: whoever counts leaves the missing out of `n` and says how many there were.
 *
 * Errors: `not_a_number`, `not_a_count`; `empty` for 0 of 0; `out_of_range` for more cases than `n` or a level not between 0
 * and 1.
 *
 * Source: Clopper CJ, Pearson ES (1934) Biometrika 26:404-413; Newcombe RG (1998) Stat Med 17:857-872, method 5.
 */
export function clopperPearsonInterval(cases: number, n: number, options: { readonly level?: number } = {}): ProportionInterval {
  const { level = 0.95 } = options;
  requireCases(cases, n);
  const tail = (1 - requireLevel(level)) / 2;
  const lower = cases === 0 ? 0 : betaQuantile(tail, cases, n - cases + 1);
  const upper = cases === n ? 1 : 1 - betaQuantile(tail, n - cases, cases + 1);
  return { estimate: cases / n, lower, upper, level, cases, n, method: "Clopper-Pearson exact interval", note: null };
}
