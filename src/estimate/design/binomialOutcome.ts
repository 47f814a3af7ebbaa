import { EstimateError } from "../EstimateError.js";
import { numberColumn } from "./numberColumn.js";

/** Columns of a yes-or-no outcome: one of booleans or 0 and 1, or cases among n in each row. */
export type BinomialColumns = string | { readonly cases: string; readonly n: string };

/**
 * Cases and numbers examined in each used row.
 *
 * Errors: `not_a_number`; `out_of_range` for a single outcome that is not 0 or 1, or more cases than examined; `not_a_count`;
 * `no_variation` when all are cases or none is.
 */
export function binomialOutcome(
  rows: readonly object[],
  used: Int32Array,
  outcome: BinomialColumns,
): { readonly cases: Float64Array; readonly n: Float64Array } {
  const single = typeof outcome === "string";
  const cases = numberColumn(rows, used, single ? outcome : outcome.cases);
  const n = single ? new Float64Array(used.length).fill(1) : numberColumn(rows, used, outcome.n);
  cases.forEach((value, i) => {
    const where = `in row ${used[i]! + 1}`;
    if (single && value !== 0 && value !== 1) {
      throw new EstimateError(
        "out_of_range",
        `The outcome "${outcome}" is ${value} ${where}.`,
        "A yes-or-no outcome is true and false, or 1 and 0; give counts as { cases, n }.",
      );
    }
    if (!Number.isInteger(value) || value < 0 || !Number.isInteger(n[i])) {
      throw new EstimateError("not_a_count", `There are ${value} cases of ${n[i]!} ${where}.`, "Give whole numbers.");
    }
    if (value > n[i]!) {
      throw new EstimateError(
        "out_of_range",
        `There are ${value} cases of ${n[i]!} ${where}.`,
        "Give in n all that were examined, the cases included.",
      );
    }
  });
  const name = single ? outcome : outcome.cases;
  const all = cases.every((value, i) => value === n[i]);
  if (all || cases.every((value) => value === 0)) {
    throw new EstimateError(
      "no_variation",
      `The outcome "${name}" is ${all ? "yes" : "no"} in every row used.`,
      "There is nothing to explain; give the proportion with an exact interval.",
    );
  }
  return { cases, n };
}
