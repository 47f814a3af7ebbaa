import type { Table, TableCell } from "../chart/Table.js";
import { StudyError } from "../study/StudyError.js";

/**
 * Rows, such as `study.visits`, as a table that can be shown or written with `toCsv`. The columns are the fields of all rows together,
 * in the order in which they first come; a field that a row lacks is missing, and several codes are joined with `;`.
 * @throws StudyError `table_cell` when a field holds an object, or NaN, which is not how missing is written here.
 */
export function toTable(rows: readonly object[], caption = "Rows"): Table {
  const names = [...new Set(rows.flatMap((row) => Object.keys(row)))];
  return {
    caption,
    columns: names.map((name) => ({ name, title: name })),
    rows: rows.map((row) => {
      const fields = row as Readonly<Record<string, unknown>>;
      return Object.fromEntries(names.map((name) => [name, cellOf(name, fields[name])]));
    }),
  };
}

function cellOf(name: string, value: unknown): TableCell {
  if (value === null || value === undefined) return null;
  if (typeof value === "string" || typeof value === "boolean") return value;
  if (typeof value === "number" && !Number.isNaN(value)) return value;
  if (Array.isArray(value) && value.every((item) => typeof item !== "object")) return value.join(";");
  const found = typeof value === "number" ? "NaN" : "an object";
  throw new StudyError(
    "table_cell",
    `The field ${name} holds ${found}, which no cell of a table can.`,
    "Give rows whose fields are numbers, texts, yes or no, or null for missing.",
  );
}
