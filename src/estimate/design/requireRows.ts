import { EstimateError } from "../EstimateError.js";

/**
 * Checks that rows are a list of records.
 *
 * Errors: `empty` when there is no list; `out_of_range` for a row that is no record.
 */
export function requireRows(rows: readonly object[]): void {
  if (!Array.isArray(rows)) {
    throw new EstimateError("empty", "No list of rows was given.", "Give rows: a list of records, each with its columns.");
  }
  for (let i = 0; i < rows.length; i += 1) {
    if (typeof rows[i] === "object" && rows[i] !== null) continue;
    throw new EstimateError(
      "out_of_range",
      `Row ${i + 1} is ${JSON.stringify(rows[i])}, which is no record.`,
      "Give each row as a record with its columns, and leave out rows that hold nothing.",
    );
  }
}
