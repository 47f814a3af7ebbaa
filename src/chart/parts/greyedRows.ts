import type { Table } from "../Table.js";

/** The rows of a table that are too small to be judged, by index, all with one reason. */
export function greyedRows(rows: readonly { readonly tooFew?: boolean }[], reason: string): NonNullable<Table["greyed"]> {
  return rows.flatMap((row, index) => (row.tooFew === true ? [{ row: index, reason }] : []));
}
