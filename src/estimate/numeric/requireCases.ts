import { EstimateError } from "../EstimateError.js";
import { requireCount } from "./requireCount.js";

/**
 * Checks that `cases` of `n` is a proportion: two counts, `n` above 0 and `cases` no more than `n`.
 *
 * Errors: `not_a_number`; `not_a_count`; `empty` when `n` is 0; `out_of_range` when `cases` is above `n`.
 */
export function requireCases(cases: number, n: number): void {
  requireCount("number of cases", cases);
  requireCount("number examined", n);
  if (n === 0) {
    throw new EstimateError("empty", "Nothing was examined, so there is no proportion.", "Give at least one observation.");
  }
  if (cases > n) {
    throw new EstimateError(
      "out_of_range",
      `There are ${cases} cases among ${n} examined.`,
      "Give first the cases, then the number examined with the cases included.",
    );
  }
}
