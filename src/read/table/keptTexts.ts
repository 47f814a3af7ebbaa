import type { CutRecord } from "../text/CutRecord.js";
import { ownCopy } from "../text/ownCopy.js";
import { textTable } from "../text/textTable.js";

/**
 * Takes the cells of further columns from a row as they stand, by header; a blank cell is null. The same text is held in memory once, for up to
 * 50,000 texts of up to 200 letters.
 */
export function keptTexts(
  columns: readonly { readonly header: string; readonly at: number }[],
): (record: CutRecord) => Readonly<Record<string, string | null>> {
  const { find, keep } = textTable<string | null>();
  return ({ text, bounds }) => {
    const kept: Record<string, string | null> = {};
    for (const { header, at } of columns) {
      const start = bounds[2 * at] ?? 0;
      const end = bounds[2 * at + 1] ?? 0;
      let value = find(text, start, end);
      if (value === undefined) {
        const cell = ownCopy(text.slice(start, end));
        keep(cell, (value = cell.trim() === "" ? null : cell));
      }
      kept[header] = value;
    }
    return kept;
  };
}
