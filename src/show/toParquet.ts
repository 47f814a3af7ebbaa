import type { Table, TableCell } from "../chart/Table.js";
import { StudyError } from "../study/StudyError.js";

/**
 * A table as a Parquet file, for R, Python, DuckDB and others: columns are named by their field; a column of numbers is DOUBLE, or INT32 when
 * all are whole and fit, of yes and no BOOLEAN, of texts UTF8; null is missing. A column that mixes kinds is written as text. A column
 * without any value is text too.
 * @throws StudyError `parquet_missing` when hyparquet-writer is not installed.
 * @throws RangeError for NaN: missing is null.
 */
export async function toParquet(table: Table): Promise<Uint8Array> {
  const columnData = table.columns.map(({ name }) =>
    columnOf(
      name,
      table.rows.map((row) => row[name] ?? null),
    ),
  );
  const { parquetWriteBuffer } = await loadWriter();
  return new Uint8Array(parquetWriteBuffer({ columnData }));
}

interface ParquetColumn {
  readonly name: string;
  readonly data: TableCell[];
  readonly type: "INT32" | "DOUBLE" | "BOOLEAN" | "STRING";
  readonly nullable: true;
}

function columnOf(name: string, data: TableCell[]): ParquetColumn {
  const known = data.filter((cell) => cell !== null);
  if (known.some((cell) => Number.isNaN(cell))) throw new RangeError(`The column ${name} holds NaN; missing is null.`);
  const all = (kind: string) => known.length > 0 && known.every((cell) => typeof cell === kind);
  if (all("boolean")) return { name, data, type: "BOOLEAN", nullable: true };
  if (all("number")) {
    const whole = known.every((cell) => Number.isInteger(cell) && Math.abs(Number(cell)) < 2 ** 31);
    return { name, data, type: whole ? "INT32" : "DOUBLE", nullable: true };
  }
  return { name, data: data.map((cell) => (cell === null ? null : String(cell))), type: "STRING", nullable: true };
}

interface Writer {
  readonly parquetWriteBuffer: (options: { columnData: ParquetColumn[] }) => ArrayBuffer;
}

async function loadWriter(): Promise<Writer> {
  try {
    return await import("hyparquet-writer");
  } catch (error) {
    throw new StudyError(
      "parquet_missing",
      `The package hyparquet-writer, which writes Parquet files, cannot be loaded: ${error instanceof Error ? error.message : String(error)}`,
      "Install it beside underfoot: npm install hyparquet-writer.",
    );
  }
}
