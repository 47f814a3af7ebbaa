import { csvCell } from "./csvCell.js";
import { isFormula } from "./isFormula.js";
import type { Table, TableCell, TableColumn } from "../chart/Table.js";

/**
 * A table as CSV (RFC 4180: comma, CRLF, quotes doubled), headings first, UTF-8. Numbers in full precision; a percent column holds
 * proportions and says so in its heading; missing is empty; booleans are yes and no.
 *
 * A text that a spreadsheet would run as a formula (first character = + - @ tab or a line break, or a full-width = + - @) gets an
 * apostrophe before it, after the OWASP page on CSV injection; a number never does. The price is that such a text is not read back as
 * it was.
 * @throws RangeError for NaN: missing is null.
 */
export function toCsv(table: Table): string {
  const lines = [
    table.columns.map(heading),
    ...table.rows.map((row) => table.columns.map(({ name }) => cell(row[name] ?? null))),
  ];
  return lines.map((line) => `${line.join(",")}\r\n`).join("");
}

function heading(column: TableColumn): string {
  return text(column.percent === true ? `${column.title} (proportion)` : column.title);
}

function cell(value: TableCell): string {
  if (value === null) return "";
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "string") return text(value);
  if (Number.isNaN(value)) throw new RangeError("A cell is NaN; missing is null.");
  return String(value);
}

function text(value: string): string {
  return csvCell(isFormula(value) ? `'${value}` : value);
}
