import type { Column } from "../../study/Column.js";
import { fieldName } from "../../study/fieldName.js";
import type { Source } from "../../study/Source.js";
import type { SourceColumn } from "../mapping/TableSource.js";
import type { Fault } from "../report/Fault.js";
import type { CutRecord } from "../text/CutRecord.js";
import type { CellDecider } from "./cellDecider.js";
import type { CellValue } from "./CellValue.js";
import type { ColumnLayout, RecordLayout } from "./columnLayout.js";
import type { Draft } from "./Draft.js";
import { keptTexts } from "./keptTexts.js";

/** A fault of the row at hand. */
export interface RowFault {
  readonly fault: Fault;
  /** Header of the column in the file. */
  readonly column: string | null;
  readonly value: string | null;
}

/** Makes records from the cells of one file. */
export interface RowDrafter<Row> {
  /** Whether these cells make a row that could be kept. */
  readonly fits: (cells: readonly string[]) => boolean;
  /** The record; faults of its cells are added to `faults`. Cells that are empty or not believed are null. */
  readonly draft: (record: CutRecord, line: number, faults: RowFault[]) => Draft<Row>;
}

/**
 * A maker of the records that stand in a row as `record` says; `deciders` stand in the order of the columns of the table. Columns that the file does not
 * have hold their constant. Cells that several feet share are counted for the first of them only.
 */
export function rowDrafter<Row extends Source>(
  file: string,
  sources: readonly Pick<SourceColumn, "constant">[],
  deciders: readonly CellDecider[],
  layout: ColumnLayout,
  record: RecordLayout,
): RowDrafter<Row> {
  const field = ({ name }: Column) => fieldName(name);
  const all: Record<string, CellValue> = {};
  deciders.forEach(({ column }, index) => {
    all[field(column)] = sources[index]?.constant ?? null;
  });
  if (record.foot !== null) all["foot"] = record.foot;
  // Copying a whole record and filling it keeps one hidden class for a million rows, which growing an object does not.
  const template = { ...all, file, line: 0 } as Record<string, CellValue> & { line: number };
  const first = layout.records[0] === record;
  const columns = deciders.flatMap(({ column, decide }, index) => {
    const at = record.at[index] ?? -1;
    const counts = first || record.own[index] === true ? 1 : 0;
    return at === -1 ? [] : [{ at, column, decide, field: field(column), header: (layout.headers[at] ?? "").trim(), counts }];
  });
  const required = columns.filter(({ column }) => column.required);
  const kept = layout.extra.length === 0 ? null : keptTexts(layout.extra);
  return {
    fits: (cells) =>
      cells.length === layout.width &&
      required.every(({ at, decide }) => decide(cells[at] ?? "").fault?.severity !== "set_aside"),
    draft(cut, line, faults) {
      const { text, bounds } = cut;
      const row = { ...template };
      row.line = line;
      for (const { at, column, decide, field, header, counts } of columns) {
        const start = bounds[2 * at] ?? 0;
        const end = bounds[2 * at + 1] ?? 0;
        if (start === end && !column.required) continue;
        const decision = decide(text, start, end);
        decision.count += counts;
        row[field] = decision.value;
        if (decision.fault !== null) faults.push({ fault: decision.fault, column: header, value: text.slice(start, end) });
      }
      const drafted = row as unknown as Draft<Row>;
      if (kept !== null) drafted.extra = kept(cut);
      return drafted;
    },
  };
}
