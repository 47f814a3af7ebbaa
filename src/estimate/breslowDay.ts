import type { ChiSquareTest } from "./ChiSquareTest.js";
import { chiSquareTest } from "./numeric/chiSquareTest.js";
import { requireTable } from "./numeric/requireTable.js";
import { requireWithin } from "./numeric/requireWithin.js";
import type { TwoByTwo } from "./TwoByTwo.js";

/**
 * Breslow-Day test, with Tarone's adjustment, that strata share the odds ratio that is given.
 *
 * Method: in each stratum the cell a expected under the common odds ratio solves a quadratic; squared distances over the
 * variance 1 / (1/A + 1/B + 1/C + 1/D) of the fitted cells add up to chi-square on strata - 1 degrees of freedom. Tarone
 * subtracts (sum of distances)^2 / sum of variances, which makes the test valid with the Mantel-Haenszel odds ratio. Strata
 * with an empty margin are left out; with fewer than two left both tests are null.
 *
 * Missing: whoever counts leaves the missing out.
 *
 * Errors: `empty` for an empty stratum; `not_a_number`, `not_a_count`; `out_of_range` for an odds ratio that is not positive.
 *
 * Source: Breslow NE, Day NE (1980) Statistical Methods in Cancer Research I, equation 4.30; Tarone RE (1985) Biometrika
 * 72:91-95.
 */
export function breslowDay(
  strata: readonly TwoByTwo[],
  { oddsRatio }: { readonly oddsRatio: number },
): { readonly breslowDay: ChiSquareTest; readonly tarone: ChiSquareTest } {
  requireWithin("odds ratio", oddsRatio, Number.MIN_VALUE, Infinity);
  for (const stratum of strata) requireTable(stratum);
  const used = strata.filter(({ a, b, c, d }) => a + b > 0 && c + d > 0 && a + c > 0 && b + d > 0);
  const df = Math.max(0, used.length - 1);
  let [sum, distance, variance] = [0, 0, 0];
  for (const { a, b, c, d } of used) {
    const fit = expectedExposedCases(a + b, c + d, a + c, oddsRatio);
    const v = 1 / (1 / fit + 1 / (a + b - fit) + 1 / (a + c - fit) + 1 / (d - a + fit));
    sum += (a - fit) ** 2 / v;
    distance += a - fit;
    variance += v;
  }
  return {
    breslowDay: chiSquareTest(df > 0 ? sum : null, df),
    tarone: chiSquareTest(df > 0 ? Math.max(0, sum - distance ** 2 / variance) : null, df),
  };
}

/** The root between its bounds of A (unexposed - cases + A) = oddsRatio (exposed - A) (cases - A). */
function expectedExposedCases(exposed: number, unexposed: number, cases: number, oddsRatio: number): number {
  const square = 1 - oddsRatio;
  const linear = unexposed - cases + oddsRatio * (exposed + cases);
  const free = -oddsRatio * exposed * cases;
  if (square === 0) return -free / linear;
  const root = Math.sqrt(linear * linear - 4 * square * free);
  // Written so that nothing cancels: `linear` is positive whenever the other form would lose digits.
  return linear >= 0 ? (-2 * free) / (linear + root) : (root - linear) / (2 * square);
}
