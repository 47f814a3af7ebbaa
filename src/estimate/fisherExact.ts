import type { Interval } from "./Interval.js";
import { conditionalOdds } from "./numeric/conditionalOdds.js";
import { requireLevel } from "./numeric/requireLevel.js";
import { requireOneOf } from "./numeric/requireOneOf.js";
import { requireTable } from "./numeric/requireTable.js";
import { tableCount } from "./numeric/tableCount.js";

/** Fisher's exact test of a two-by-two table. */
export interface FisherExactTest {
  /** Two-sided: all tables no likelier than the one seen. */
  readonly p: number;
  /** Evidence that the odds ratio is above 1. */
  readonly pGreater: number;
  /** Evidence that the odds ratio is below 1. */
  readonly pLess: number;
  /** Conditional maximum likelihood estimate with exact limits. */
  readonly oddsRatio: Interval;
  readonly n: number;
}

/**
 * Fisher's exact test of a two-by-two table with the conditional odds ratio and its exact limits: `a` cases and `b` others
 * among the exposed, `c` cases and `d` others among the unexposed, all independent of each other.
 *
 * Method: with both margins fixed, cell a is (noncentral) hypergeometric. The estimate is the conditional maximum likelihood
 * one, not ad/(bc). Limits put (1 - level)/2 into each tail; with `alternative` greater or less they are one-sided with
 * 1 - level in the one tail. An unbounded limit is `Infinity`; when a margin is 0 nothing can be said: the estimate is null,
 * the limits 0 and `Infinity`, all p are 1. Roots are solved to full precision; R's fisher.test stops its search at 1e-4 of the
 * odds ratio or its inverse, so wide limits differ from R's in the third digit.
 *
 * Missing: whoever counts leaves the missing out and says how many there were.
 *
 * Errors: `not_a_number`, `not_a_count`; `empty` when all cells are 0; `out_of_range` for a level not between 0 and 1, or
 * when more than two million tables have the same margins.
 *
 * Source: Fisher RA (1935) J R Stat Soc 98:39-82.
 */
export function fisherExact(
  a: number,
  b: number,
  c: number,
  d: number,
  options: { readonly level?: number; readonly alternative?: "two-sided" | "greater" | "less" } = {},
): FisherExactTest {
  const { level = 0.95, alternative = "two-sided" } = options;
  requireOneOf("alternative", alternative, ["two-sided", "greater", "less"]);
  requireTable({ a, b, c, d });
  const outside = 1 - requireLevel(level);
  const tails = {
    "two-sided": { lowerTail: outside / 2, upperTail: outside / 2 },
    greater: { lowerTail: outside, upperTail: 0 },
    less: { lowerTail: 0, upperTail: outside },
  }[alternative];
  const { estimate, lower, upper, pLess, pGreater, pTwoSided } = conditionalOdds(tableCount({ a, b, c, d }), a, tails);
  const method = `Conditional odds ratio with exact ${alternative} limits`;
  const note = estimate === null ? "A margin of the table is 0, so it says nothing about the odds ratio." : null;
  return { p: pTwoSided, pGreater, pLess, oddsRatio: { estimate, lower, upper, level, method, note }, n: a + b + c + d };
}
