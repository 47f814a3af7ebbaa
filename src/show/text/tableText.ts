import { cellText } from "../../chart/cellText.js";
import type { Table } from "../../chart/Table.js";
import { wrapped } from "../../chart/parts/wrapped.js";
import { isNumeric } from "../isNumeric.js";
import { tableNotes } from "../tableNotes.js";
import { wordsBelow } from "../wordsBelow.js";

/**
 * A table in plain text, at most `width` characters wide: columns side by side when they fit with their texts broken over
 * lines, else in blocks of columns one below the other, or, for few rows or very long words, one line a cell under each row's name. Rows after the first `most` are cut, with the count. Words about rows stand below
 * where they are long or all alike.
 */
export function tableText(whole: Table, width: number, most = 50): string {
  const { table, words } = wordsBelow({ ...whole, rows: whole.rows.slice(0, most) });
  const { rows } = table;
  const greyed = new Set((table.greyed ?? []).map(({ row }) => row));
  const cells = rows.map((row, index) =>
    table.columns.map((column, at) => {
      const text = cellText(row[column.name] ?? null, column).replace(/\s+/g, " ");
      return at === 0 && greyed.has(index) ? `${text} *` : text;
    }),
  );
  const notes = [...words, ...tableNotes(whole, rows.length)].flatMap((note) => wrapped(note, width));
  const caption = wrapped(table.caption, width);
  if (rows.length === 0) return [...caption, ...notes].join("\n");
  const body = sideBySide(table, cells, width) ?? inBlocks(table, cells, width) ?? oneByOne(table, cells, width);
  return [...caption, ...body, ...notes].join("\n");
}

const narrowest = 12;

/** Fewer rows than this are easier to read one by one than in blocks. */
const rowsInBlocks = 3;

/** Blocks of columns one below the other, each with the names of the rows; null for few rows, or when not even one column fits beside the names. */
function inBlocks(table: Table, cells: readonly (readonly string[])[], width: number): string[] | null {
  if (cells.length < rowsInBlocks) return null;
  const part = (from: number, to: number) => {
    const of = <Item>(items: readonly Item[]) => [...items.slice(0, 1), ...items.slice(from, to)];
    return sideBySide({ ...table, columns: of(table.columns) }, cells.map(of), width, 24);
  };
  const blocks: string[][] = [];
  for (let from = 1; from < table.columns.length;) {
    let to = table.columns.length;
    let block = part(from, to);
    while (block === null && to > from + 1) block = part(from, (to -= 1));
    if (block === null) return null;
    blocks.push(block);
    from = to;
  }
  return blocks.flatMap((block, index) => (index === 0 ? block : ["", ...block]));
}

/** Null when the columns do not fit; the names of the rows keep `namesAtLeast` characters where they are that long. */
function sideBySide(table: Table, cells: readonly (readonly string[])[], width: number, namesAtLeast = 0): string[] | null {
  const right = table.columns.map((column) => isNumeric(table, column));
  const columns = table.columns.map((column, at) => {
    const wanted = Math.max(longestWord(column.title), ...cells.map((row) => row[at]?.length ?? 0));
    const words = Math.max(longestWord(column.title), ...cells.map((row) => longestWord(row[at] ?? "")));
    const least = at === 0 ? Math.max(words, Math.min(wanted, namesAtLeast)) : words;
    return { wanted, least: right[at] === true ? Infinity : least };
  });
  const widths = fitted(columns, width);
  if (widths === null) return null;
  const block = (parts: readonly string[], fromTop: boolean) => {
    const lines = parts.map((part, at) => wrapped(part, widths[at] ?? 0));
    const depth = Math.max(...lines.map((each) => each.length));
    return Array.from({ length: depth }, (_, level) =>
      lines
        .map((each, at) => {
          const text = each[fromTop ? level : each.length - depth + level] ?? "";
          return right[at] === true ? text.padStart(widths[at] ?? 0) : text.padEnd(widths[at] ?? 0);
        })
        .join("  ")
        .trimEnd(),
    );
  };
  const titles = table.columns.map((column) => column.title);
  return [
    ...block(titles, false),
    widths.map((each) => "-".repeat(each)).join("  "),
    ...cells.flatMap((row) => block(row, true)),
  ];
}

/** Column widths that fit, the widest text columns narrowed first; null when no narrowing is enough. */
function fitted(columns: readonly { readonly wanted: number; readonly least: number }[], width: number): number[] | null {
  const widths = columns.map(({ wanted }) => wanted);
  const over = () => widths.reduce((sum, each) => sum + each + 2, -2) - width;
  while (over() > 0) {
    const room = widths.map((each, at) => each - Math.max(narrowest, columns[at]?.least ?? each));
    const most = room.reduce(
      (best, each, at) => (each > 0 && (best < 0 || (widths[at] ?? 0) > (widths[best] ?? 0)) ? at : best),
      -1,
    );
    if (most < 0) return null;
    widths[most] = (widths[most] ?? 0) - 1;
  }
  return widths;
}

function longestWord(text: string): number {
  return Math.max(0, ...text.split(" ").map((word) => word.length));
}

function oneByOne(table: Table, cells: readonly (readonly string[])[], width: number): string[] {
  return cells.flatMap((row) =>
    table.columns.flatMap((column, at) => {
      const [first = "", ...rest] = wrapped(`${column.title}: ${row[at] ?? ""}`, width - 4);
      return [`${at === 0 ? "" : "  "}${first}`, ...rest.map((line) => `    ${line}`)];
    }),
  );
}
