import { requireWithin } from "./requireWithin.js";

/**
 * The p values that are there, each with its place in the list; null ones are left out.
 *
 * Errors: `not_a_number`; `out_of_range` for a p value outside 0 to 1.
 */
export function requireProbabilities(
  pValues: readonly (number | null)[],
): readonly { readonly p: number; readonly place: number }[] {
  const found: { p: number; place: number }[] = [];
  pValues.forEach((p, place) => {
    if (p !== null) found.push({ p: requireWithin("p value", p, 0, 1), place });
  });
  return found;
}
