import { EstimateError } from "../EstimateError.js";

/**
 * Checks that terms are a list of names and records, the factors of products too.
 *
 * Errors: `empty` when there is no list; `out_of_range` for what is no term.
 */
export function requireTerms(terms: unknown): void {
  if (!Array.isArray(terms)) {
    throw new EstimateError("empty", "No list of terms was given.", "Give the terms as a list, [] for the intercept alone.");
  }
  for (const term of terms as readonly unknown[]) {
    if (typeof term === "string") continue;
    if (typeof term !== "object" || term === null) {
      throw new EstimateError(
        "out_of_range",
        `One of the terms is ${JSON.stringify(term)}.`,
        "Give the name of a column, or a record such as { column, reference }.",
      );
    }
    if ("product" in term) requireTerms(term.product);
  }
}
