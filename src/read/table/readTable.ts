import type { FileKind, InputFile } from "../../study/DataReport.js";
import type { Source } from "../../study/Source.js";
import { layoutInWords } from "../mapping/layoutInWords.js";
import type { TableSource } from "../mapping/TableSource.js";
import type { Fault } from "../report/Fault.js";
import type { IssueLog } from "../report/issueLog.js";
import { messages } from "../report/messages.js";
import { refusals } from "../report/refusals.js";
import type { SetAsideFile, SetAsideRow, SetAsideSink } from "../SetAsideRow.js";
import { cellAt } from "../text/cellAt.js";
import { cellsOf } from "../text/cellsOf.js";
import type { CutRecord } from "../text/CutRecord.js";
import { isBlank } from "../text/isBlank.js";
import { openText } from "../text/openText.js";
import { readRows } from "../text/readRows.js";
import type { Zod } from "../Zod.js";
import { cellDecider } from "./cellDecider.js";
import { columnLayout, type ColumnLayout, type RecordLayout } from "./columnLayout.js";
import { rowDrafter, type RowDrafter, type RowFault } from "./rowDrafter.js";
import type { RowRule } from "./RowRule.js";
import { unitSmell } from "./unitSmell.js";

/** One table file and how to read it. */
export interface TableFile<Row extends Source> {
  readonly path: string;
  readonly source: TableSource;
  readonly kind: FileKind;
  /** What a row is, for the notice that there is none. */
  readonly row: string;
  readonly rule: RowRule<Row>;
  readonly setAside?: SetAsideSink | undefined;
}

interface Header<Row> {
  readonly layout: ColumnLayout;
  readonly records: readonly { readonly layout: RecordLayout; readonly drafter: RowDrafter<Row> }[];
  readonly text: string;
}

/**
 * Reads one CSV file of a study by its column table and its mapping. Every record, that is every row that is not blank, or every foot of it in a file with one row a
 * visit, ends accepted, or set aside with a reason; a bad cell that is not required becomes null and is reported. `Row` must be the record type of the column table.
 *
 * @throws StudyError when the file is not text, is empty, or its header lacks a required column.
 */
export async function readTable<Row extends Source>(
  zod: Zod,
  table: TableFile<Row>,
  log: IssueLog,
): Promise<{ readonly records: Row[]; readonly input: InputFile }> {
  const { path, kind, rule, source } = table;
  const { file, delimiter, columns } = source;
  const deciders = columns.map(({ column, reading }) => cellDecider(zod, column, reading));
  const records: Row[] = [];
  const header: { found: Header<Row> | null } = { found: null };
  let rows = 0;
  let recordsRead = 0;

  const wholeFile = (fault: Fault, column: string | null = null, value: string | null = null) => {
    log.add(fault, { file, line: null, row: null, column, value });
  };
  const sink = table.setAside;
  const text = openText(path, file, source.encoding);
  const setAside = (
    row: Omit<SetAsideRow, "reasons">,
    faults: readonly RowFault[],
    { layout, text: headerText }: Header<Row>,
  ) => {
    const from: SetAsideFile = {
      file,
      delimiter,
      encoding: text.encoding(),
      header: { text: headerText, cells: layout.headers },
    };
    const hard = faults.filter(({ fault }) => fault.severity === "set_aside");
    sink?.(from, { ...row, reasons: hard.map(({ fault, column }) => `${column === null ? "" : `${column}: `}${fault.found}`) });
  };
  const refuse = (fault: Fault, row: Omit<SetAsideRow, "reasons">, value: string, found: Header<Row>) => {
    rows += 1;
    recordsRead += found.records.length;
    log.add(fault, { file, line: row.line, row: rows, column: null, value });
    setAside(row, [{ fault, column: null, value: null }], found);
  };

  const takeRow = (cut: CutRecord, line: number, bareQuote: boolean, text: string, found: Header<Row>) => {
    const reported: RowFault[] = [];
    let accepted = 0;
    for (const { layout, drafter } of found.records) {
      const faults: RowFault[] =
        bareQuote && reported.length === 0 ? [{ fault: messages.bareQuote(), column: null, value: null }] : [];
      const row = drafter.draft(cut, line, faults);
      rule.seen?.(row, faults);
      const usable = !faults.some(({ fault }) => fault.severity === "set_aside");
      const kept =
        usable && rule.accepts(row, (fault, column) => faults.push(rowFault(fault, column, cut, found.layout, layout)));
      if (kept) {
        records.push(row);
        accepted += 1;
      }
      for (const each of faults) {
        if (!kept && each.fault.severity !== "set_aside") continue;
        if (
          layout.foot !== null &&
          reported.some(({ fault, column }) => column === each.column && fault.found === each.fault.found)
        )
          continue;
        log.add(each.fault, { file, line, row: rows, column: each.column, value: each.value });
        if (layout.foot !== null || !kept) reported.push(each);
      }
    }
    if (sink !== undefined && accepted < found.records.length)
      setAside({ line, text, bytes: null, cells: cellsOf(cut) }, reported, found);
  };

  const rowFault = (
    fault: Fault,
    name: string | undefined,
    cut: CutRecord,
    layout: ColumnLayout,
    record: RecordLayout,
  ): RowFault => {
    if (name === undefined) {
      const found = record.foot === null ? fault.found : `${fault.found} (${record.foot})`;
      return { fault: { ...fault, found }, column: null, value: null };
    }
    const at = record.at[columns.findIndex(({ column }) => column.name === name)] ?? -1;
    return { fault, column: layout.headers[at]?.trim() ?? name, value: at === -1 ? null : cellAt(cut, at) };
  };

  await readRows(text.blocks, delimiter, {
    width: () => header.found?.layout.width ?? null,
    fits: (cells) => header.found?.records.some(({ drafter }) => drafter.fits(cells)) ?? false,
    row(cut, line, bareQuote, text) {
      if (isBlank(cut)) return;
      if (header.found === null) {
        const layout = columnLayout(source, cellsOf(cut), (fault, name) => {
          wholeFile(fault, null, name);
        });
        const made = layout.records.map((record) => ({
          layout: record,
          drafter: rowDrafter<Row>(file, columns, deciders, layout, record),
        }));
        header.found = { layout, records: made, text };
        return;
      }
      const { width } = header.found.layout;
      if (cut.width < width || !isBlank(cut, width)) {
        const cells = cellsOf(cut);
        refuse(
          messages.ragged(cells.length, width, delimiter),
          { line, text, bytes: null, cells },
          cells.slice(0, width + 1).join(delimiter),
          header.found,
        );
        return;
      }
      rows += 1;
      recordsRead += header.found.records.length;
      takeRow(cut, line, bareQuote, text, header.found);
    },
    refused(fault, line, text, bytes) {
      if (header.found === null) throw refusals.headerUnreadable(file, line, messages.line(fault).found);
      refuse(messages.line(fault), { line, text, bytes, cells: null }, text, header.found);
    },
  });
  if (header.found === null) throw refusals.empty(file);
  if (rows === 0) wholeFile(messages.noRows(table.row));
  for (const { column, texts, converts, plain } of deciders) {
    const smell = converts ? null : unitSmell(column, texts, plain);
    if (smell !== null) wholeFile(smell, column.name);
  }
  const accepted = records.length;
  const headers = header.found.layout.headers.map((name) => name.trim());
  const layout = source.named ? { layout: layoutInWords(source, header.found.layout, text.encoding()) } : {};
  return {
    records,
    input: {
      file,
      kind,
      ...text.digest(),
      rowsRead: recordsRead,
      accepted,
      setAside: recordsRead - accepted,
      headers,
      ...layout,
    },
  };
}
