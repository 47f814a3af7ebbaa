import { EstimateError } from "../EstimateError.js";
import { numberColumn } from "./numberColumn.js";

/**
 * Counts of events in each used row.
 *
 * Errors: `not_a_number`; `not_a_count` for a negative or broken number; `no_variation` when there is no event at all.
 */
export function countOutcome(rows: readonly object[], used: Int32Array, outcome: string): Float64Array {
  const counts = numberColumn(rows, used, outcome);
  counts.forEach((count, i) => {
    if (Number.isInteger(count) && count >= 0) return;
    throw new EstimateError(
      "not_a_count",
      `The outcome "${outcome}" is ${count} in row ${used[i]! + 1}.`,
      "Give whole numbers of events.",
    );
  });
  if (counts.some((count) => count > 0)) return counts;
  throw new EstimateError(
    "no_variation",
    `The outcome "${outcome}" is 0 in every row used.`,
    "There is nothing to explain; give the rate with an exact interval.",
  );
}
