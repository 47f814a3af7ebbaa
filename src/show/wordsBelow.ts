import type { Table, TableCell } from "../chart/Table.js";

/** Texts up to this length stay in their cells. */
const short = 40;

/**
 * A table without the columns marked `below` where they are better read under it: words that are the same in every row are said once, and
 * long ones are numbered. Columns without any word are left out. `words` are the sentences to be printed under the table.
 *
 * @private
 */
export function wordsBelow(table: Table): { readonly table: Table; readonly words: readonly string[] } {
  const words: string[] = [];
  let { columns, rows } = table;
  for (const column of table.columns.filter(({ below }) => below !== undefined)) {
    const { name, title, below } = column;
    const wordsOf = (row: Table["rows"][number]) => String(row[name] ?? "");
    const texts = [...new Set(table.rows.map(wordsOf))].filter((text) => text !== "");
    const everywhere = table.rows.every((row) => wordsOf(row) !== "");
    const long = below === "long" && texts.some((text) => text.length > short);
    if (table.rows.length === 0 || (!long && texts.length > 1)) continue;
    if (texts.length === 0 || (texts.length === 1 && everywhere)) {
      columns = columns.filter((other) => other !== column);
      words.push(...texts.map((text) => `${title}: ${text}`));
    } else if (long) {
      const numbers = new Map<TableCell, TableCell>(texts.map((text, place) => [text, `${place + 1}`]));
      rows = rows.map((row) => ({ ...row, [name]: numbers.get(wordsOf(row)) ?? null }));
      words.push(...texts.map((text, place) => `${title} ${place + 1}: ${text}`));
    }
  }
  return { table: { ...table, columns, rows }, words };
}
