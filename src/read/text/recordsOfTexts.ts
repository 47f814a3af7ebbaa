import { parse } from "csv-parse/sync";

/**
 * The cells of texts that each hold one record by RFC 4180; null for a text that does not. `relaxed` takes stray quotes as they stand. The texts
 * are parsed together and, when that fails, in halves.
 */
export function recordsOfTexts(texts: readonly string[], delimiter: string, relaxed: boolean): (readonly string[] | null)[] {
  if (texts.length === 0) return [];
  const together = parsed(texts, delimiter, relaxed);
  if (together !== null) return together;
  if (texts.length === 1) return [null];
  const half = texts.length >> 1;
  const part = (from: number, to: number) => recordsOfTexts(texts.slice(from, to), delimiter, relaxed);
  return [...part(0, half), ...part(half, texts.length)];
}

// As many records as texts means that no quote reached over the end of one.
function parsed(texts: readonly string[], delimiter: string, relaxed: boolean): string[][] | null {
  const options = { delimiter, record_delimiter: "\n", relax_column_count: true, relax_quotes: relaxed, trim: !relaxed };
  try {
    const records = parse(texts.join("\n"), options);
    return records.length === texts.length ? records : null;
  } catch {
    return null;
  }
}
