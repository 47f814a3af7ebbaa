import { requireProbabilities } from "./numeric/requireProbabilities.js";

/**
 * P values adjusted so that the chance of any false finding stays at or below the limit they are held to, in the order given,
 * however the tests depend on each other.
 *
 * Method: step-down. The i-th smallest of m is multiplied by m + 1 - i, and each takes the largest value from the smallest up
 * to itself, at most 1.
 *
 * Missing: a null p value stays null and does not count in m.
 *
 * Errors: `not_a_number`; `out_of_range` for a p value outside 0 to 1.
 *
 * Source: Holm S (1979) Scand J Stat 6:65-70.
 */
export function holm(pValues: readonly (number | null)[]): (number | null)[] {
  const sorted = [...requireProbabilities(pValues)].sort((x, y) => x.p - y.p);
  const adjusted: (number | null)[] = pValues.map(() => null);
  let largest = 0;
  sorted.forEach(({ p, place }, i) => {
    largest = Math.max(largest, Math.min(1, p * (sorted.length - i)));
    adjusted[place] = largest;
  });
  return adjusted;
}
