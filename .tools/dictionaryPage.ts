import type { Column } from "../src/study/Column.js";
import { fileTables } from "../src/study/fileTables.js";

function allowed(column: Column): string {
  if (column.values !== undefined) return column.values.map((value) => `\`${value}\``).join(", ");
  const range = ([low, high]: readonly [number, number]) => `${String(low)} to ${String(high)}`;
  const parts = [
    ...(column.soft === undefined ? [] : [`usual ${range(column.soft)}`]),
    ...(column.hard === undefined ? [] : [`believed ${range(column.hard)}`]),
    ...(column.source === undefined ? [] : [`(${column.source})`]),
  ];
  return parts.join("; ").replace("; (", " (");
}

function kind(column: Column): string {
  const type = column.type === "codes" ? "codes, separated by `;`" : column.type;
  return column.unit === null ? type : `${type}, ${column.unit}`;
}

/** The page docs/data-dictionary.md, made from the column tables. */
export function dictionaryPage(): string {
  const parts = fileTables.map(({ file, row, columns }) => {
    const rows = columns.map((column) => {
      const name = column.required ? `**\`${column.name}\`**` : `\`${column.name}\``;
      return `| ${[name, column.meaning, kind(column), allowed(column), column.level, column.missing].join(" | ")} |`;
    });
    const head = "| column | meaning | type, unit | allowed | measured per | an empty cell means |\n|---|---|---|---|---|---|";
    return `## ${file}\n\nOne row is ${row}. Columns in bold are required.\n\n${head}\n${rows.join("\n")}\n`;
  });
  const head =
    "# Data dictionary\n\nMade from the column tables in `src/study/` by `npm run docs`; change them there. A value outside its *usual* range is kept" +
    " with a warning; outside its *believed* range the cell is left empty and reported, or the row is set aside when the column is required.\n";
  return `${head}\n${parts.join("\n")}`;
}
