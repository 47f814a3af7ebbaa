import { EstimateError } from "../EstimateError.js";
import { nearestName } from "./nearestName.js";

/**
 * Checks that every column is a field of at least one row.
 *
 * Errors: `unknown_column`, with the nearest name there is.
 */
export function requireColumns(rows: readonly object[], columns: readonly string[]): void {
  for (const column of columns) {
    if (rows.some((row) => column in row)) continue;
    const nearest = nearestName(column, Object.keys(rows[0] ?? {}));
    throw new EstimateError(
      "unknown_column",
      `No row has a column "${column}".`,
      nearest === null ? "Give rows with columns." : `The nearest name is "${nearest}".`,
    );
  }
}
