import { EstimateError } from "./EstimateError.js";

/** Counts of two observers' ratings of the same things. @private */
export interface PairedRatings {
  /** Rows: first observer's category; columns: second's; in the order of `categories`. */
  readonly matrix: readonly (readonly number[])[];
  readonly n: number;
  /** Pairs with one or both ratings null. */
  readonly missing: number;
}

/**
 * Table of counts of two observers' ratings of the same things, ready for `cohenKappa`.
 *
 * Method: every pair adds one to the cell of its two categories.
 *
 * Missing: pairs with a null are left out and counted in `missing`.
 *
 * Errors: `out_of_range` for a rating that is none of `categories`.
 *
 * Source: counting, no source.
 */
export function pairedRatings<Category extends string | number>(
  pairs: readonly { readonly first: Category | null; readonly second: Category | null }[],
  categories: readonly Category[],
): PairedRatings {
  const index = new Map(categories.map((category, i) => [category, i]));
  const matrix = categories.map(() => categories.map(() => 0));
  let missing = 0;
  for (const { first, second } of pairs) {
    if (first === null || second === null) {
      missing += 1;
      continue;
    }
    matrix[place(index, first)]![place(index, second)]! += 1;
  }
  return { matrix, n: pairs.length - missing, missing };
}

function place<Category extends string | number>(index: ReadonlyMap<Category, number>, rating: Category): number {
  const found = index.get(rating);
  if (found !== undefined) return found;
  throw new EstimateError(
    "out_of_range",
    `The rating ${rating} is none of the categories ${[...index.keys()].join(", ")}.`,
    "List every category that occurs.",
  );
}
