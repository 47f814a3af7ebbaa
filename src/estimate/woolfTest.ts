import type { ChiSquareTest } from "./ChiSquareTest.js";
import { EstimateError } from "./EstimateError.js";
import { chiSquareTest } from "./numeric/chiSquareTest.js";
import { requireTable } from "./numeric/requireTable.js";
import { requireWithin } from "./numeric/requireWithin.js";
import type { TwoByTwo } from "./TwoByTwo.js";

/**
 * Woolf's test that strata share one odds ratio, whatever it is.
 *
 * Method: the log odds ratios of the strata are weighed by 1 / (1/a + 1/b + 1/c + 1/d); their weighed squared distances from
 * the weighed mean are chi-square on strata - 1 degrees of freedom. When any cell of any stratum is 0, 1/2 is added to every
 * cell of every stratum first. With `about`, an odds ratio found otherwise such as the Mantel-Haenszel one, the distances are taken
 * from its logarithm instead of the mean (Cochran's Q). Null for a single stratum.
 *
 * Missing: whoever counts leaves the missing out.
 *
 * Errors: `empty` for no strata or an empty stratum; `not_a_number`, `not_a_count`; `out_of_range` for an odds ratio that is not
 * positive.
 *
 * Source: Woolf B (1955) Ann Hum Genet 19:251-253.
 */
export function woolfTest(strata: readonly TwoByTwo[], options: { readonly about?: number } = {}): ChiSquareTest {
  const { about } = options;
  if (about !== undefined) requireWithin("odds ratio", about, Number.MIN_VALUE, Number.MAX_VALUE);
  if (strata.length === 0) throw new EstimateError("empty", "There are no strata.", "Give at least one two-by-two table.");
  for (const stratum of strata) requireTable(stratum);
  const more = strata.some(({ a, b, c, d }) => a * b * c * d === 0) ? 0.5 : 0;
  const effects = strata
    .map(({ a, b, c, d }) => [a + more, b + more, c + more, d + more] as const)
    .map(([a, b, c, d]) => ({ log: Math.log((a * d) / (b * c)), weight: 1 / (1 / a + 1 / b + 1 / c + 1 / d) }));
  const weight = effects.reduce((sum, effect) => sum + effect.weight, 0);
  const mean =
    about !== undefined ? Math.log(about) : effects.reduce((sum, effect) => sum + effect.weight * effect.log, 0) / weight;
  const q = effects.reduce((sum, effect) => sum + effect.weight * (effect.log - mean) ** 2, 0);
  return chiSquareTest(q, strata.length - 1);
}
