import { requireProbabilities } from "./numeric/requireProbabilities.js";

/**
 * P values adjusted for the false discovery rate, in the order given: calling those at or below q discoveries keeps the
 * expected share of false ones among them at or below q, for independent or positively dependent tests.
 *
 * Method: step-up. The i-th smallest of m is multiplied by m / i, and each takes the smallest value from itself upwards, at
 * most 1.
 *
 * Missing: a null p value stays null and does not count in m.
 *
 * Errors: `not_a_number`; `out_of_range` for a p value outside 0 to 1.
 *
 * Source: Benjamini Y, Hochberg Y (1995) J R Stat Soc B 57:289-300.
 */
export function benjaminiHochberg(pValues: readonly (number | null)[]): (number | null)[] {
  const sorted = [...requireProbabilities(pValues)].sort((x, y) => y.p - x.p);
  const adjusted: (number | null)[] = pValues.map(() => null);
  let smallest = 1;
  sorted.forEach(({ p, place }, i) => {
    smallest = Math.min(smallest, p * (sorted.length / (sorted.length - i)));
    adjusted[place] = smallest;
  });
  return adjusted;
}
