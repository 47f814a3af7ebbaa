import type { ChiSquareTest } from "./ChiSquareTest.js";
import { clopperPearsonInterval } from "./clopperPearsonInterval.js";
import type { Interval } from "./Interval.js";
import { binomialTwoSided } from "./numeric/binomialTwoSided.js";
import { chiSquareTest } from "./numeric/chiSquareTest.js";
import { logChoose } from "./numeric/logChoose.js";
import { ratioOf } from "./numeric/ratioOf.js";
import { requireCount } from "./numeric/requireCount.js";
import { requireLevel } from "./numeric/requireLevel.js";

/** McNemar's test in its forms. */
export interface McNemarTest {
  /** Exact binomial p, two-sided; null without discordant pairs. */
  readonly exactP: number | null;
  /** The same with half the probability of the count seen taken off each side. */
  readonly midP: number | null;
  readonly chiSquare: ChiSquareTest;
  /** With continuity correction. */
  readonly corrected: ChiSquareTest;
  /** Conditional odds ratio b / c with exact limits. */
  readonly oddsRatio: Interval;
  /** Pairs that disagree, b + c. */
  readonly discordant: number;
}

/**
 * McNemar's test on pairs: `b` pairs where only the first is a case against `c` pairs where only the second is. Pairs that
 * agree tell nothing about the difference and do not enter.
 *
 * Method: given b + c, b is binomial with chance 1/2 when there is no difference; exact and mid-P values from that, chi-square
 * (b - c)^2 / (b + c) and its continuity-corrected form (|b - c| - 1)^2 / (b + c). The odds ratio b/c has limits l/(1-l) from
 * the Clopper-Pearson limits of b of b + c; unbounded ones are `Infinity`. Without discordant pairs everything is null.
 *
 * Missing: pairs with one half missing are left out before counting, and are to be reported.
 *
 * Errors: `not_a_number`, `not_a_count`; `out_of_range` for a level not between 0 and 1.
 *
 * Source: McNemar Q (1947) Psychometrika 12:153-157; Fagerland MW, Lydersen S, Laake P (2013) BMC Med Res Methodol 13:91
 * (mid-P).
 */
export function mcnemar(b: number, c: number, options: { readonly level?: number } = {}): McNemarTest {
  const level = requireLevel(options.level ?? 0.95);
  const n = requireCount("pairs with the first only", b) + requireCount("pairs with the second only", c);
  const gap = Math.abs(b - c);
  const exactP = n === 0 ? null : binomialTwoSided(b, n, 0.5);
  const midP = exactP === null ? null : b === c ? 1 - pointChance(b, n) / 2 : exactP - pointChance(b, n);
  return {
    exactP,
    midP,
    chiSquare: chiSquareTest(n === 0 ? null : (gap * gap) / n, 1),
    corrected: chiSquareTest(n === 0 ? null : Math.max(0, gap - 1) ** 2 / n, 1),
    oddsRatio: pairedOdds(b, c, level),
    discordant: n,
  };
}

function pointChance(b: number, n: number): number {
  return Math.exp(logChoose(n, b) - n * Math.LN2);
}

function pairedOdds(b: number, c: number, level: number): Interval {
  const method = "Conditional odds ratio of pairs with exact limits";
  if (b + c === 0) return { estimate: null, lower: null, upper: null, level, method, note: "No pair disagrees." };
  const { lower, upper } = clopperPearsonInterval(b, b + c, { level });
  const odds = (p: number): number => (p === 1 ? Infinity : p / (1 - p));
  return { estimate: ratioOf(b, c), lower: odds(lower), upper: odds(upper), level, method, note: null };
}
