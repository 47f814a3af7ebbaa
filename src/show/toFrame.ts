import { StudyError } from "../study/StudyError.js";

/**
 * What a data frame of danfojs-node offers at least; its own documentation lists the rest. Declared here, so that these types can be
 * read where danfojs-node is not installed.
 */
export interface Frame {
  readonly shape: readonly number[];
  readonly columns: readonly string[];
  readonly dtypes: readonly string[];
  readonly values: readonly unknown[];
  print(): void;
  head(rows?: number): Frame;
  tail(rows?: number): Frame;
  describe(): Frame;
  query(condition: unknown): Frame;
  column(name: string): unknown;
  groupby(columns: readonly string[]): unknown;
  sortValues(column: string, options?: { readonly ascending?: boolean }): Frame;
}

type Cell = string | number | boolean | null;

/**
 * Rows as a danfojs-node data frame, for the reader's own slicing; no number of this library comes out of one. The frame counts in
 * single precision. A missing number becomes NaN, because the frame would count null as 0 in sums and group means; a missing text
 * stays null; yes and no become 1, 0 and NaN in a column with gaps; several codes are joined with `;`. Columns are those of all rows
 * together. Takes a second or two the first time.
 * @throws StudyError when danfojs-node is not installed, when there are no rows, or when a cell holds what no frame can.
 */
export async function toFrame(rows: readonly object[]): Promise<Frame> {
  const names = [...new Set(rows.flatMap((row) => Object.keys(row)))];
  if (names.length === 0)
    throw new StudyError("frame_empty", "There are no rows to make a data frame of.", "Check the selection that gave the rows.");
  const columns = names.map((name) => columnOf(name, rows));
  const { DataFrame } = await loadDanfo();
  return new DataFrame(
    rows.map((_, index) => columns.map((column) => column.cells[index])),
    { columns: names, dtypes: columns.map((column) => column.dtype) },
  );
}

interface Column {
  readonly cells: readonly Cell[];
  readonly dtype: "string" | "boolean" | "float32";
}

function columnOf(name: string, rows: readonly object[]): Column {
  const cells = rows.map((row) => cellOf(name, (row as Readonly<Record<string, unknown>>)[name]));
  if (cells.some((cell) => typeof cell === "string"))
    return { cells: cells.map((cell) => (cell === null ? null : String(cell))), dtype: "string" };
  if (cells.every((cell) => typeof cell === "boolean")) return { cells, dtype: "boolean" };
  return { cells: cells.map((cell) => (cell === null ? NaN : Number(cell))), dtype: "float32" };
}

function cellOf(name: string, value: unknown): Cell {
  if (value === null || value === undefined) return null;
  if (typeof value === "string" || typeof value === "number" || typeof value === "boolean") return value;
  if (Array.isArray(value) && value.every((item) => typeof item !== "object")) return value.join(";");
  throw new StudyError(
    "frame_cell",
    `The field ${name} holds an object, which no column of a data frame can.`,
    "Give rows whose fields are numbers, texts, yes or no, or missing.",
  );
}

interface Danfo {
  readonly DataFrame: new (rows: unknown[], options: { columns: string[]; dtypes: string[] }) => Frame;
}

async function loadDanfo(): Promise<Danfo> {
  try {
    return await import("danfojs-node");
  } catch (error) {
    throw new StudyError(
      "danfo_missing",
      `The package danfojs-node, which makes data frames, cannot be loaded: ${error instanceof Error ? error.message : String(error)}`,
      "Install it beside underfoot, as the read-me of danfojs-node says; nothing else here needs it.",
    );
  }
}
