import type { Column } from "../../study/Column.js";
import type { Fault } from "./Fault.js";

/** A fault of one cell: it costs the row when the column is required, else the cell, and the words say so. */
export function cellFault(column: Column, code: string, found: string, hint: string): Fault {
  if (column.required) return { code, severity: "set_aside", found, hint };
  return { code, severity: "cell_blanked", found: `${found}; the cell counts as empty`, hint };
}
