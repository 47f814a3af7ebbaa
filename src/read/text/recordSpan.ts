import { quoteScan } from "./quoteScan.js";
import { recordsOfTexts } from "./recordsOfTexts.js";

/** The lines that make one record. */
export interface RecordSpan {
  /** Physical lines it covers. */
  readonly lines: number;
  /** A quote inside a cell that is not quoted is taken as an inch mark or the like. */
  readonly bareQuote: boolean;
}

/** What a record must look like. */
export interface RecordShape {
  readonly delimiter: string;
  /** Number of cells of the header; null while the header itself is read. */
  readonly width: () => number | null;
  /** Whether these cells alone make a good row. */
  readonly fits: (cells: readonly string[]) => boolean;
}

const MOST_LINES = 100;
const LONGEST_RECORD = 1_000_000;

/**
 * How many lines the record takes that starts at a line with a double quote.
 *
 * A quoted cell may go on over line ends. It is believed only when it is closed by the rules within 100 lines, gives as many cells as the
 * header, and none of the lines it would take in is a good row by itself: so a stray quote costs its own line and never a good row
 * after it. A quote inside an unquoted cell is taken as it stands.
 *
 * The lines looked at are those from `start` up to, not including, `end`; `last` says that the file has no more that could belong here.
 * Returns `stray_quote` when the line makes no record, `more` when the lines given do not decide it and there are more in the file.
 */
export function recordSpan(
  lines: readonly string[],
  start: number,
  end: number,
  last: boolean,
  shape: RecordShape,
): RecordSpan | "stray_quote" | "more" {
  const { delimiter } = shape;
  const first = lines[start] ?? "";
  const { state, delimiters } = quoteScan(first, delimiter);
  if (state === "closed") return { lines: 1, bareQuote: false };
  if (state === "broken")
    return quoteScan(first, delimiter, { relaxed: true }).state === "closed" ? { lines: 1, bareQuote: true } : "stray_quote";
  const width = shape.width();
  let cells = delimiters + 1;
  let length = first.length;
  for (let count = 2; count <= MOST_LINES && length < LONGEST_RECORD; count++) {
    if (start + count > end) return last ? "stray_quote" : "more";
    const line = lines[start + count - 1] ?? "";
    const scan = quoteScan(line, delimiter, { inside: true });
    if (scan.state === "broken" || isGoodRow(line, width, shape)) return "stray_quote";
    length += line.length;
    cells += scan.delimiters;
    if (scan.state === "closed") return width === null || cells === width ? { lines: count, bareQuote: false } : "stray_quote";
  }
  return "stray_quote";
}

function isGoodRow(line: string, width: number | null, { delimiter, fits }: RecordShape): boolean {
  if (width === null) return false;
  const cells = line.split(delimiter);
  if (cells.length < width) return false;
  if (!line.includes('"')) return fits(cells);
  const scan = quoteScan(line, delimiter, { relaxed: true });
  if (scan.state !== "closed" || scan.delimiters !== width - 1) return false;
  const record = recordsOfTexts([line], delimiter, true)[0] ?? null;
  return record !== null && fits(record);
}
