import type { Column } from "../../study/Column.js";
import type { Foot } from "../../study/Foot.js";
import type { CellValue } from "../table/CellValue.js";
import type { Encoding } from "../text/Encoding.js";
import type { CellReading } from "./CellReading.js";

/** How one column of a table is found in a file and read. */
export interface SourceColumn {
  readonly column: Column;
  /** Spellings of the header; null: the name of the column itself. */
  readonly headers: readonly string[] | null;
  /** The value of every row of a column that the file does not have; undefined: the file has it. */
  readonly constant: CellValue | undefined;
  readonly reading: CellReading | null;
}

/** One file of a study and how it becomes rows of a table. */
export interface TableSource {
  readonly file: string;
  /** study.json names it, so that it must be there. */
  readonly named: boolean;
  readonly delimiter: string;
  /** undefined: UTF-8, or what the mark at the beginning of the file says. */
  readonly encoding: Encoding | undefined;
  /** In the order of the column table. */
  readonly columns: readonly SourceColumn[];
  /** Feet whose cells stand side by side in a row, with the spellings of each; null: one row, one record. */
  readonly feet: readonly { readonly foot: Foot; readonly spellings: readonly string[] }[] | null;
  /** Headers of further columns that are kept as they are. */
  readonly extra: readonly string[];
}
