import { parse } from "csv-parse/sync";

/**
 * The cells of lines that each hold one whole record by RFC 4180; null for a line that does not: a quoted cell that goes on in the next
 * line, or a quote where none may stand. Lines are parsed together and, when that fails, in halves.
 */
export function recordsOfLines(lines: readonly string[], delimiter: string): (readonly string[] | null)[] {
  if (lines.length === 0) return [];
  const together = parsed(lines, delimiter);
  if (together !== null) return together;
  if (lines.length === 1) return [null];
  const half = lines.length >> 1;
  return [...recordsOfLines(lines.slice(0, half), delimiter), ...recordsOfLines(lines.slice(half), delimiter)];
}

// As many records as lines means that no quote reached over a line end.
function parsed(lines: readonly string[], delimiter: string): string[][] | null {
  try {
    const records = parse(lines.join("\n"), { delimiter, record_delimiter: "\n", relax_column_count: true, trim: true });
    return records.length === lines.length ? records : null;
  } catch {
    return null;
  }
}
