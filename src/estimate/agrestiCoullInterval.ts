import { normalQuantile } from "./numeric/normalQuantile.js";
import { requireCases } from "./numeric/requireCases.js";
import { requireLevel } from "./numeric/requireLevel.js";
import type { ProportionInterval } from "./ProportionInterval.js";

/**
 * Agresti-Coull interval of a proportion: `cases` of `n` independent things. Here to compare with published tables that use
 * it; `wilsonInterval` has the same centre and is narrower.
 *
 * Method: z^2 observations, half of them cases, are added, and the simple (Wald) interval is taken around the proportion of
 * the sum. Limits beyond 0 or 1 are cut there.
 *
 * Missing: whoever counts leaves the missing out of `n` and says how many there were.
 *
 * Errors: `not_a_number`, `not_a_count`; `empty` for 0 of 0; `out_of_range` for more cases than `n` or a level not between 0
 * and 1.
 *
 * Source: Agresti A, Coull BA (1998) Am Stat 52:119-126.
 */
export function agrestiCoullInterval(cases: number, n: number, options: { readonly level?: number } = {}): ProportionInterval {
  const { level = 0.95 } = options;
  requireCases(cases, n);
  const z = normalQuantile((1 + requireLevel(level)) / 2);
  const total = n + z * z;
  const centre = (cases + (z * z) / 2) / total;
  const reach = z * Math.sqrt((centre * (1 - centre)) / total);
  return {
    estimate: cases / n,
    lower: Math.max(0, centre - reach),
    upper: Math.min(1, centre + reach),
    level,
    cases,
    n,
    method: "Agresti-Coull interval",
    note: null,
  };
}
