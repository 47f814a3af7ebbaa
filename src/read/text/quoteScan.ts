/** How a line leaves its quoted cells. */
export interface QuoteScan {
  /** `open`: the last cell is quoted and not closed. `broken`: a quote stands where RFC 4180 lets none stand. */
  readonly state: "closed" | "open" | "broken";
  /** Delimiters outside quotes, up to where the state was decided. */
  readonly delimiters: number;
}

/** Where a scan starts and how strict it is. */
export interface ScanOptions {
  /** The line continues a quoted cell of the line before. */
  readonly inside?: boolean;
  /** Quotes in an unquoted cell, and text after a closing quote, are taken as they stand instead of breaking the line. */
  readonly relaxed?: boolean;
}

/**
 * Follows the double quotes of one physical line by RFC 4180, section 2, points 5 to 7; blanks around a quoted cell are allowed. It finds
 * where records end, which a parser that may only go on from an error cannot do; the cells themselves are csv-parse's work.
 */
export function quoteScan(line: string, delimiter: string, { inside = false, relaxed = false }: ScanOptions = {}): QuoteScan {
  let delimiters = 0;
  let at = 0;
  let quoted = inside;
  for (;;) {
    const start = quoted ? at : afterBlanks(line, at, delimiter);
    const next = line.indexOf(delimiter, start);
    const cellEnd = next === -1 ? line.length : next;
    let end = cellEnd;
    if (quoted || (line[start] === '"' && (!relaxed || start === at))) {
      const closed = closingQuote(line, quoted ? start : start + 1);
      if (closed === -1) return { state: "open", delimiters };
      end = afterBlanks(line, closed, delimiter);
      if (end < line.length && line[end] !== delimiter) {
        if (!relaxed) return { state: "broken", delimiters };
        end = line.indexOf(delimiter, end);
        if (end === -1) end = line.length;
      }
    } else if (!relaxed && line.slice(start, cellEnd).includes('"')) return { state: "broken", delimiters };
    if (end >= line.length) return { state: "closed", delimiters };
    delimiters += 1;
    at = end + 1;
    quoted = false;
  }
}

function afterBlanks(line: string, from: number, delimiter: string): number {
  let at = from;
  while ((line[at] === " " || line[at] === "\t") && line[at] !== delimiter) at += 1;
  return at;
}

/** Just after the quote that closes a cell, or -1; a quote written twice is part of the cell. */
function closingQuote(line: string, from: number): number {
  for (let at = line.indexOf('"', from); at !== -1; at = line.indexOf('"', at + 2)) {
    if (line[at + 1] !== '"') return at + 1;
  }
  return -1;
}
