import type { Column } from "../../study/Column.js";
import type { FileKind, InputFile } from "../../study/DataReport.js";
import type { Source } from "../../study/Source.js";
import type { Fault } from "../report/Fault.js";
import type { IssueLog } from "../report/issueLog.js";
import { messages } from "../report/messages.js";
import { refusals } from "../report/refusals.js";
import { openText } from "../text/openText.js";
import { readRows } from "../text/readRows.js";
import type { Zod } from "../Zod.js";
import { cellDecider } from "./cellDecider.js";
import { columnLayout, type ColumnLayout } from "./columnLayout.js";
import { rowDrafter, type RowDrafter, type RowFault } from "./rowDrafter.js";
import type { RowRule } from "./RowRule.js";
import { unitSmell } from "./unitSmell.js";

/** One table file and how to read it. */
export interface TableFile<Row extends Source> {
  readonly path: string;
  readonly file: string;
  readonly kind: FileKind;
  /** What a row is, for the notice that there is none. */
  readonly row: string;
  readonly columns: readonly Column[];
  readonly rule: RowRule<Row>;
}

const DELIMITER = ",";

/**
 * Reads one CSV file of a study by its column table. Every row that is not blank ends accepted, or set aside with a reason; a bad cell that
 * is not required becomes null and is reported. `Row` must be the record type of the column table.
 *
 * @throws StudyError when the file is not UTF-8 text, is empty, or its header lacks a required column.
 */
export async function readTable<Row extends Source>(
  zod: Zod,
  table: TableFile<Row>,
  log: IssueLog,
): Promise<{ readonly records: Row[]; readonly input: InputFile }> {
  const { path, file, kind, columns, rule } = table;
  const deciders = columns.map((column) => cellDecider(zod, column));
  const records: Row[] = [];
  const header: { found: { readonly layout: ColumnLayout; readonly drafter: RowDrafter<Row> } | null } = { found: null };
  let rowsRead = 0;

  const wholeFile = (fault: Fault, column: string | null = null, value: string | null = null) => {
    log.add(fault, { file, line: null, row: null, column, value });
  };

  const setAside = (fault: Fault, line: number, value: string | null) => {
    log.add(fault, { file, line, row: rowsRead, column: null, value });
  };

  const takeRow = (cells: readonly string[], line: number, bareQuote: boolean, drafter: RowDrafter<Row>) => {
    const faults: RowFault[] = bareQuote ? [{ fault: messages.bareQuote(), column: null, value: null }] : [];
    const row = drafter.draft(cells, line, faults);
    rule.seen?.(row, faults);
    const usable = !faults.some(({ fault }) => fault.severity === "set_aside");
    const accepted =
      usable &&
      rule.accepts(row, (fault, column) => {
        faults.push({ fault, column: column ?? null, value: column === undefined ? null : rawCell(column, cells) });
      });
    if (accepted) records.push(row);
    for (const { fault, column, value } of faults) {
      if (accepted || fault.severity === "set_aside") log.add(fault, { file, line, row: rowsRead, column, value });
    }
  };

  const rawCell = (name: string, cells: readonly string[]): string | null => {
    const index = columns.findIndex((column) => column.name === name);
    return cells[header.found?.layout.at[index] ?? -1] ?? null;
  };

  const text = openText(path, file);
  await readRows(text.blocks, DELIMITER, {
    width: () => header.found?.layout.width ?? null,
    fits: (cells) => header.found?.drafter.fits(cells) ?? false,
    row(cells, line, bareQuote) {
      if (isBlank(cells)) return;
      if (header.found === null) {
        const layout = columnLayout(file, columns, cells, (fault, header) => {
          wholeFile(fault, null, header);
        });
        header.found = { layout, drafter: rowDrafter<Row>(file, deciders, layout) };
        return;
      }
      rowsRead += 1;
      const { width } = header.found.layout;
      const extra = cells.length > width && cells.slice(width).some((cell) => cell.trim() !== "");
      if (cells.length < width || extra)
        setAside(messages.ragged(cells.length, width), line, cells.slice(0, width + 1).join(DELIMITER));
      else takeRow(cells, line, bareQuote, header.found.drafter);
    },
    refused(fault, line, value) {
      if (header.found === null) throw refusals.headerUnreadable(file, line, messages.line(fault).found);
      rowsRead += 1;
      setAside(messages.line(fault), line, value);
    },
  });
  if (header.found === null) throw refusals.empty(file);
  if (rowsRead === 0) wholeFile(messages.noRows(table.row));
  for (const { column, texts } of deciders) {
    const smell = unitSmell(column, texts);
    if (smell !== null) wholeFile(smell, column.name);
  }
  const accepted = records.length;
  return { records, input: { file, kind, ...text.digest(), rowsRead, accepted, setAside: rowsRead - accepted } };
}

function isBlank(cells: readonly string[]): boolean {
  for (const cell of cells) if (cell.trim() !== "") return false;
  return true;
}
