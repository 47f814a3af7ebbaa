import { join } from "node:path";
import type { SetAsideFile, SetAsideRow, SetAsideSink } from "../read/SetAsideRow.js";
import { csvCell } from "../show/csvCell.js";
import { isFormula } from "../show/isFormula.js";
import { openFileWhole, type WholeFile } from "./openFileWhole.js";

/** Files of rows that were set aside, while they are written. */
export interface SetAsideFiles {
  readonly sink: SetAsideSink;
  /** Puts the files in their places and names them. */
  readonly finish: () => readonly string[];
  /** Takes away what was written. */
  readonly discard: () => void;
}

const ADDED = ["set_aside_line", "set_aside_because", "set_aside_guarded"];
/** A number is no formula, whatever its sign. */
const NUMBER = /^[+-]?\d+([.,]\d+)?$/;

interface Pair {
  readonly table: WholeFile;
  readonly exact: WholeFile;
  readonly encode: (text: string) => Uint8Array;
}

/**
 * Writes the rows that are set aside into a folder, two files for each file of the study.
 *
 * `visits.set-aside.txt` holds the header and the rows as they stand, byte for byte (in UTF-16 with the byte order of little ends); it is a text file, which no
 * spreadsheet runs. `visits.set-aside.csv` is for a spreadsheet: the same cells in the delimiter and encoding of the file, after three columns that say on which line
 * the row stands, why it was set aside, and which of its cells begin like a formula; such a cell has one apostrophe more before it, and is the same text again
 * without it (OWASP, CSV Injection). A row that cannot be split into cells stands in one cell.
 *
 * @private
 */
export async function setAsideFiles(folder: string): Promise<SetAsideFiles> {
  const { default: iconv } = await import("iconv-lite");
  const pairs = new Map<string, Pair>();
  const pairOf = ({ file, delimiter, encoding, header }: SetAsideFile): Pair => {
    const known = pairs.get(file);
    if (known !== undefined) return known;
    const encode = (text: string): Uint8Array => iconv.encode(text, encoding === "utf-16" ? "utf16le" : encoding);
    const path = join(folder, nameOf(file));
    const pair = { table: openFileWhole(`${path}.csv`), exact: openFileWhole(`${path}.txt`), encode };
    pairs.set(file, pair);
    const mark = encoding === "windows-1252" ? "" : "\uFEFF";
    pair.table.write(encode(`${mark}${[...ADDED, ...(header?.cells ?? []).map(inert)].map(csvCell).join(delimiter)}\r\n`));
    pair.exact.write(encode(`${encoding === "utf-16" ? mark : ""}${header === null ? "" : `${header.text}\n`}`));
    return pair;
  };
  return {
    sink(file, row) {
      const { table, exact, encode } = pairOf(file);
      exact.write(row.bytes ?? encode(row.text));
      exact.write(encode("\n"));
      table.write(encode(`${tableRow(file, row)}\r\n`));
    },
    finish() {
      const names = [...pairs.keys()].map(nameOf);
      for (const { table, exact } of pairs.values()) {
        table.finish();
        exact.finish();
      }
      return names.flatMap((name) => [`${name}.csv`, `${name}.txt`]);
    },
    discard() {
      for (const { table, exact } of pairs.values()) {
        table.discard();
        exact.discard();
      }
    },
  };
}

function tableRow({ delimiter, header }: SetAsideFile, { line, text, cells, reasons }: SetAsideRow): string {
  const own = cells ?? [text];
  const live = own.flatMap((cell, index) => (inert(cell) === cell ? [] : [header?.cells[index]?.trim() ?? `cell ${index + 1}`]));
  const added = [String(line), reasons.join("; "), live.join("; ")];
  return [...added, ...own].map((cell) => csvCell(inert(cell))).join(delimiter);
}

function inert(cell: string): string {
  return isFormula(cell) && !NUMBER.test(cell) ? `'${cell}` : cell;
}

/** A file in a folder of the study keeps the name of the folder before its own. */
function nameOf(file: string): string {
  return `${file
    .replace(/^(\.[/\\])+/, "")
    .replace(/[/\\]/g, "-")
    .replace(/\.(csv|tsv|txt)$/i, "")}.set-aside`;
}
