import type { ChiSquareTest } from "./ChiSquareTest.js";
import type { EffectInterval } from "./EffectInterval.js";
import { chiSquareTest } from "./numeric/chiSquareTest.js";
import { ratioOf } from "./numeric/ratioOf.js";
import { requireLevel } from "./numeric/requireLevel.js";
import { requireTable } from "./numeric/requireTable.js";
import { waldEffect } from "./numeric/waldEffect.js";
import type { TwoByTwo } from "./TwoByTwo.js";

/** Measures of association of a two-by-two table of independent observations. */
export interface TableMeasures extends TwoByTwo {
  readonly n: number;
  readonly oddsRatio: EffectInterval;
  readonly riskRatio: EffectInterval;
  readonly riskDifference: EffectInterval;
  /** Pearson chi-square. */
  readonly chiSquare: ChiSquareTest;
  /** The same with Yates's continuity correction. */
  readonly chiSquareYates: ChiSquareTest;
  /** Smallest count expected when there is no association; below 5 the chi-square is rough and `fisherExact` is better. */
  readonly smallestExpected: number;
}

/**
 * Odds ratio, risk ratio and risk difference of a two-by-two table, with Wald limits and chi-square: `a` cases and `b` others
 * among the exposed, `c` cases and `d` others among the unexposed, all independent of each other.
 *
 * Method: odds ratio ad/(bc), log standard error sqrt(1/a + 1/b + 1/c + 1/d); risk ratio, log standard error
 * sqrt(1/a - 1/(a+b) + 1/c - 1/(c+d)); risk difference, standard error sqrt(p1 q1/(a+b) + p2 q2/(c+d)), limits cut at -1 and
 * 1. Nothing is added to empty cells: a ratio may then be 0, `Infinity` or (0/0) null, its limits are null, and `note` points to
 * `fisherExact` or `newcombeDifference`, which have limits there.
 *
 * Missing: whoever counts leaves the missing out and says how many there were.
 *
 * Errors: `not_a_number`, `not_a_count`; `empty` when all cells are 0; `out_of_range` for a level not between 0 and 1.
 *
 * Source: Woolf B (1955) Ann Hum Genet 19:251-253 (odds ratio); Katz D et al. (1978) Biometrics 34:469-474 (risk ratio); Yates
 * F (1934) J R Stat Soc Suppl 1:217-235; Agresti A, Categorical Data Analysis.
 */
export function tableOf(a: number, b: number, c: number, d: number, options: { readonly level?: number } = {}): TableMeasures {
  const level = requireLevel(options.level ?? 0.95);
  requireTable({ a, b, c, d });
  const [exposed, unexposed, n] = [a + b, c + d, a + b + c + d];
  const both = exposed > 0 && unexposed > 0;
  const [p1, p2] = [a / exposed, c / unexposed];
  const oddsSe = Math.sqrt(1 / a + 1 / b + 1 / c + 1 / d);
  const riskSe = Math.sqrt(1 / a - 1 / exposed + 1 / c - 1 / unexposed);
  const differenceSe = Math.sqrt((p1 * (1 - p1)) / exposed + (p2 * (1 - p2)) / unexposed);
  return {
    a,
    b,
    c,
    d,
    n,
    oddsRatio: waldEffect(ratioOf(a * d, b * c), oddsSe, "ratio", level, {
      method: "Odds ratio, Wald limits on the log scale",
      why: "A cell of the table is 0, so the odds ratio has no Wald limits; fisherExact gives exact ones.",
    }),
    riskRatio: waldEffect(both ? ratioOf(p1, p2) : null, riskSe, "ratio", level, {
      method: "Risk ratio, Wald limits on the log scale",
      why: "A group is empty, has no cases, or both have nothing but cases, so the risk ratio has no Wald limits.",
    }),
    riskDifference: waldEffect(both ? p1 - p2 : null, differenceSe, "difference", level, {
      method: "Risk difference, Wald limits",
      why: "A group is empty or neither group varies, so the difference has no Wald limits; see newcombeDifference.",
    }),
    ...associationTests(a, b, c, d),
  };
}

function associationTests(
  a: number,
  b: number,
  c: number,
  d: number,
): Pick<TableMeasures, "chiSquare" | "chiSquareYates" | "smallestExpected"> {
  const n = a + b + c + d;
  const margins = (a + b) * (c + d) * ((a + c) * (b + d));
  const gap = Math.abs(a * d - b * c);
  const chiSquare = margins === 0 ? null : (n * gap * gap) / margins;
  const yates = margins === 0 ? null : (n * Math.max(0, gap - n / 2) ** 2) / margins;
  return {
    chiSquare: chiSquareTest(chiSquare, 1),
    chiSquareYates: chiSquareTest(yates, 1),
    smallestExpected: (Math.min(a + b, c + d) * Math.min(a + c, b + d)) / n,
  };
}
