import { EstimateError } from "../EstimateError.js";
import type { TwoByTwo } from "../TwoByTwo.js";
import { requireCount } from "./requireCount.js";

/**
 * Checks that a two-by-two table holds four counts that are not all 0.
 *
 * Errors: `not_a_number`, `not_a_count`; `empty`.
 */
export function requireTable(table: TwoByTwo): void {
  if (typeof table !== "object" || (table as TwoByTwo | null) === null) {
    throw new EstimateError("empty", "There is no table.", "Give a table as { a, b, c, d }.");
  }
  const { a, b, c, d } = table;
  const total =
    requireCount("exposed cases", a) +
    requireCount("exposed others", b) +
    requireCount("unexposed cases", c) +
    requireCount("unexposed others", d);
  if (total === 0) throw new EstimateError("empty", "The table is empty.", "Give at least one observation.");
}
