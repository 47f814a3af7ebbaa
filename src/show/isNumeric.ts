import type { Table, TableColumn } from "../chart/Table.js";

/** Whether a column holds numbers and nothing else, and so is set flush right. @private */
export function isNumeric(table: Table, column: TableColumn): boolean {
  const cells = table.rows.map((row) => row[column.name] ?? null).filter((cell) => cell !== null);
  return cells.length > 0 && cells.every((cell) => typeof cell === "number");
}
