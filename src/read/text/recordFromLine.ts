import { CsvError, parse } from "csv-parse/sync";

/** A record that was put together, and what it took. */
export interface FoundRecord {
  readonly cells: readonly string[];
  /** Physical lines it covers. */
  readonly lines: number;
  /** A quote inside a cell that is not quoted was taken as an inch mark or the like. */
  readonly bareQuote: boolean;
}

/** What a record must look like. */
export interface RecordShape {
  readonly delimiter: string;
  /** Number of cells of the header; null while the header itself is read. */
  readonly width: number | null;
  /** Whether these cells alone make a good row. */
  readonly fits: (cells: readonly string[]) => boolean;
}

const MOST_LINES = 100;
const LONGEST_RECORD = 1_000_000;

/**
 * The record that starts at a line which is no whole record by itself, from the lines that follow.
 *
 * A quoted cell may go on over line ends. It is believed only when it is closed by the rules within 100 lines, gives as many cells as the
 * header, and none of the lines it would take in is a good row by itself: so a stray quote costs its own line and never a good row after it.
 * A quote inside an unquoted cell is taken as it stands.
 *
 * The lines looked at are those from `start` up to, not including, `end`; `last` says that the file has no more that could belong here.
 * Returns `stray_quote` when the line makes no record, `more` when the lines given do not decide it and there are more in the file.
 */
export function recordFromLine(
  lines: readonly string[],
  start: number,
  end: number,
  last: boolean,
  shape: RecordShape,
): FoundRecord | "stray_quote" | "more" {
  const first = lines[start] ?? "";
  const alone = parsed([first], shape, false);
  if (alone !== "open") return withBareQuotes(first, shape) ?? "stray_quote";
  let length = first.length;
  for (let count = 2; count <= MOST_LINES && length < LONGEST_RECORD; count++) {
    const line = lines[start + count - 1];
    if (line === undefined || start + count > end) return last ? "stray_quote" : "more";
    length += line.length;
    if (isGoodRow(line, shape)) return "stray_quote";
    if (!line.includes('"')) continue;
    const cells = parsed(lines.slice(start, start + count), shape, false);
    if (cells === "broken") return "stray_quote";
    if (cells === "open") continue;
    return shape.width === null || cells.length === shape.width ? { cells, lines: count, bareQuote: false } : "stray_quote";
  }
  return "stray_quote";
}

function isGoodRow(line: string, shape: RecordShape): boolean {
  if (shape.width === null) return false;
  const cells = line.includes('"') ? parsed([line], shape, true) : line.split(shape.delimiter);
  return typeof cells !== "string" && shape.fits(cells);
}

function withBareQuotes(line: string, shape: RecordShape): FoundRecord | null {
  const cells = parsed([line], shape, true);
  return typeof cells === "string" ? null : { cells, lines: 1, bareQuote: true };
}

function parsed(lines: readonly string[], shape: RecordShape, relaxed: boolean): readonly string[] | "open" | "broken" {
  const { delimiter } = shape;
  try {
    const options = { delimiter, record_delimiter: "\n", relax_column_count: true, trim: !relaxed, relax_quotes: relaxed };
    const records = parse(lines.join("\n"), options);
    return (records.length === 1 ? records[0] : undefined) ?? "broken";
  } catch (error) {
    return error instanceof CsvError && error.code === "CSV_QUOTE_NOT_CLOSED" ? "open" : "broken";
  }
}
