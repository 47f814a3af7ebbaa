import type { Table } from "../chart/Table.js";
import type { Frame } from "./toFrame.js";
import { toTable } from "./toTable.js";

/** A data frame as a table; the frame's NaN is missing here. @private */
export function frameTable(frame: Frame): Table {
  const rows = frame.values.map((row) => {
    const cells = Array.isArray(row) ? (row as unknown[]) : [row];
    return Object.fromEntries(frame.columns.map((name, at) => [name, Number.isNaN(cells[at]) ? null : cells[at]]));
  });
  return toTable(rows, `Data frame, ${frame.shape[0] ?? rows.length} rows and ${frame.columns.length} columns`);
}
