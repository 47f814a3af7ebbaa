import type { Column } from "../../study/Column.js";
import { fieldName } from "../../study/fieldName.js";
import type { Source } from "../../study/Source.js";
import type { Fault } from "../report/Fault.js";
import type { CellDecider } from "./cellDecider.js";
import type { CellValue } from "./CellValue.js";
import type { ColumnLayout } from "./columnLayout.js";
import type { Draft } from "./Draft.js";

/** A fault of the row at hand. */
export interface RowFault {
  readonly fault: Fault;
  readonly column: string | null;
  readonly value: string | null;
}

/** Makes records from the cells of one file. */
export interface RowDrafter<Row> {
  /** Whether these cells make a row that could be kept. */
  readonly fits: (cells: readonly string[]) => boolean;
  /** The record; faults of its cells are added to `faults`. Cells that are empty or not believed are null. */
  readonly draft: (cells: readonly string[], line: number, faults: RowFault[]) => Draft<Row>;
}

/** A maker of records from rows laid out as `layout` says; `deciders` stand in the order of the columns of the table. */
export function rowDrafter<Row extends Source>(
  file: string,
  deciders: readonly CellDecider[],
  layout: ColumnLayout,
): RowDrafter<Row> {
  const field = ({ name }: Column) => fieldName(name);
  const all: Record<string, CellValue> = {};
  for (const { column } of deciders) all[field(column)] = null;
  // Copying a whole record and filling it keeps one hidden class for a million rows, which growing an object does not.
  const template = { ...all, file, line: 0 } as Record<string, CellValue> & { line: number };
  const columns = deciders.flatMap(({ column, decide }, index) => {
    const at = layout.at[index] ?? -1;
    return at === -1 ? [] : [{ at, column, decide, field: field(column) }];
  });
  const required = columns.filter(({ column }) => column.required);
  return {
    fits: (cells) =>
      cells.length === layout.width &&
      required.every(({ at, decide }) => decide(cells[at] ?? "").fault?.severity !== "set_aside"),
    draft(cells, line, faults) {
      const row = { ...template };
      row.line = line;
      for (const { at, column, decide, field } of columns) {
        const text = cells[at] ?? "";
        if (text === "" && !column.required) continue;
        const decision = decide(text);
        decision.count += 1;
        row[field] = decision.value;
        if (decision.fault !== null) faults.push({ fault: decision.fault, column: column.name, value: text });
      }
      return row as unknown as Draft<Row>;
    },
  };
}
