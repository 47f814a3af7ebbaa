import { normalQuantile } from "./numeric/normalQuantile.js";
import { requireCases } from "./numeric/requireCases.js";
import { requireLevel } from "./numeric/requireLevel.js";
import type { ProportionInterval } from "./ProportionInterval.js";

/**
 * Wald (simple) interval of a proportion: `cases` of `n` independent things. Here to compare with published tables that use it; it
 * covers the truth less often than the level says, above all near 0 and 1: use `wilsonInterval`.
 *
 * Method: the proportion plus and minus z times the root of p(1-p)/n. Limits beyond 0 or 1 are cut there. With no or nothing but
 * cases the width is zero, which is the fault of the method and no certainty; `note` then says so.
 *
 * Missing: whoever counts leaves the missing out of `n` and says how many there were.
 *
 * Errors: `not_a_number`, `not_a_count`; `empty` for 0 of 0; `out_of_range` for more cases than `n` or a level not between 0
 * and 1.
 *
 * Source: Newcombe RG (1998) Stat Med 17:857-872, method 1.
 */
export function waldInterval(cases: number, n: number, options: { readonly level?: number } = {}): ProportionInterval {
  const { level = 0.95 } = options;
  requireCases(cases, n);
  const p = cases / n;
  const reach = normalQuantile((1 + requireLevel(level)) / 2) * Math.sqrt((p * (1 - p)) / n);
  return {
    estimate: p,
    lower: Math.max(0, p - reach),
    upper: Math.min(1, p + reach),
    level,
    cases,
    n,
    method: "Wald interval",
    note: reach > 0 ? null : "A width of zero is the fault of the method, not certainty; use wilsonInterval.",
  };
}
