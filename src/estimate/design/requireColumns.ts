import { EstimateError } from "../EstimateError.js";
import { nearestName } from "./nearestName.js";

/**
 * Checks that every column is a field of at least one row.
 *
 * Errors: `unknown_column`, with the nearest name there is; `out_of_range` for a name that is no text.
 */
export function requireColumns(rows: readonly object[], columns: readonly string[]): void {
  for (const column of columns) {
    if (typeof column !== "string") {
      throw new EstimateError(
        "out_of_range",
        `A column is called ${JSON.stringify(column)}.`,
        "Name columns by text; a term is a name or a record with its column.",
      );
    }
    if (rows.some((row) => column in row)) continue;
    const nearest = nearestName(column, Object.keys(rows[0] ?? {}));
    throw new EstimateError(
      "unknown_column",
      `No row has a column "${column}".`,
      nearest === null ? "Give rows with columns." : `The nearest name is "${nearest}".`,
    );
  }
}
