import type { Dropped } from "../Dropped.js";
import { EstimateError } from "../EstimateError.js";

/**
 * Which rows have a value in every column, by index, and how many were left out for which reason. `null` and `undefined` leave a
 * row out; so does 0 in a column of `positive` (weights, numbers examined), which carries no information.
 *
 * Errors: `not_a_number` for NaN and infinite numbers, which are never a way to write missing; `out_of_range` for a negative
 * number in `positive`; `empty` when no row is left.
 */
export function usableRows(
  rows: readonly object[],
  columns: readonly string[],
  positive: readonly string[] = [],
): { readonly used: Int32Array; readonly dropped: readonly Dropped[] } {
  const reasons = [
    ...columns.map((column) => ({ column, reason: `${column} is not recorded` })),
    ...positive.map((column) => ({ column, reason: `${column} is 0` })),
  ];
  const counts = new Int32Array(reasons.length);
  const used = new Int32Array(rows.length);
  let n = 0;
  rows.forEach((row, i) => {
    const fault = firstFault(row as Readonly<Record<string, unknown>>, i, columns, positive);
    if (fault === -1) used[n++] = i;
    else counts[fault]! += 1;
  });
  const dropped = reasons.map((reason, k) => ({ ...reason, count: counts[k]! })).filter(({ count }) => count > 0);
  if (n === 0) {
    const why = dropped.map(({ reason, count }) => `${reason} in ${count}`).join(", ");
    throw new EstimateError(
      "empty",
      `None of ${rows.length} rows can be used${why === "" ? "" : `: ${why}`}.`,
      "Give complete rows.",
    );
  }
  return { used: used.slice(0, n), dropped };
}

/** Index of the first reason to leave the row out; -1 when there is none. */
function firstFault(
  row: Readonly<Record<string, unknown>>,
  index: number,
  columns: readonly string[],
  positive: readonly string[],
): number {
  let fault = -1;
  for (let k = 0; k < columns.length; k += 1) {
    const value = row[columns[k]!];
    if (value === null || value === undefined) {
      if (fault === -1) fault = k;
    } else if (typeof value === "number" && !Number.isFinite(value)) {
      throw new EstimateError(
        "not_a_number",
        `Column "${columns[k]!}" holds ${value} in row ${index + 1}.`,
        "Write what was not recorded as null; a missing value is never NaN.",
      );
    }
  }
  for (let k = 0; k < positive.length && fault === -1; k += 1) {
    const value = row[positive[k]!];
    if (value === 0) fault = columns.length + k;
    if (typeof value === "number" && value < 0) {
      throw new EstimateError(
        "out_of_range",
        `Column "${positive[k]!}" holds ${value} in row ${index + 1}.`,
        "It must not be negative.",
      );
    }
  }
  return fault;
}
