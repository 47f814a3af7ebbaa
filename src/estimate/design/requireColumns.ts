import { EstimateError } from "../EstimateError.js";
import { nearestName } from "../../study/nearestName.js";

/**
 * Checks that every column is a field of at least one row.
 *
 * Errors: `unknown_column`, with the name it may have been meant for, or the names there are; `out_of_range` for a name that is no text.
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
    const names = Object.keys(rows[0] ?? {});
    const nearest = nearestName(column, names);
    throw new EstimateError(
      "unknown_column",
      `No row has a column "${column}".`,
      nearest === null ? columnsThere(names) : `The nearest name is "${nearest}".`,
    );
  }
}

const MOST_NAMED = 20;

function columnsThere(names: readonly string[]): string {
  if (names.length === 0) return "Give rows with columns.";
  const more = names.length > MOST_NAMED ? ` and ${names.length - MOST_NAMED} more` : "";
  return `The columns are ${names.slice(0, MOST_NAMED).join(", ")}${more}.`;
}
