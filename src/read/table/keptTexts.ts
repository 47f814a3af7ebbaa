import { ownCopy } from "../text/ownCopy.js";

const REMEMBERED = 50_000;
const LONGEST_REMEMBERED = 200;

/**
 * Takes the cells of further columns from a row as they stand, by header; a blank cell is null. The same text is held in memory once, for up to
 * 50,000 texts of up to 200 letters.
 */
export function keptTexts(
  columns: readonly { readonly header: string; readonly at: number }[],
): (cells: readonly string[]) => Readonly<Record<string, string | null>> {
  const texts = new Map<string, string>();
  const one = (cell: string): string => {
    const known = texts.get(cell);
    if (known !== undefined) return known;
    const text = ownCopy(cell);
    if (texts.size < REMEMBERED && text.length <= LONGEST_REMEMBERED) texts.set(text, text);
    return text;
  };
  return (cells) => {
    const kept: Record<string, string | null> = {};
    for (const { header, at } of columns) {
      const cell = cells[at] ?? "";
      kept[header] = cell.trim() === "" ? null : one(cell);
    }
    return kept;
  };
}
