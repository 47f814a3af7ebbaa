import type { Foot } from "../../study/Foot.js";
import type { TableKind } from "../../study/TableKind.js";
import type { Encoding } from "../text/Encoding.js";
import type { DateOrder } from "./DateOrder.js";

/** What a code word, or a value that all rows share, may stand for. */
export type WordValue = string | number | boolean;

/** How one column of a table is found and read in files of another make. null is a question that is not answered yet. */
export interface ColumnMapping {
  /** Header of the column, or several ways in which it is spelt; `{foot}` in a wide file stands for each foot. */
  readonly header?: string | readonly string[] | null | undefined;
  /** The value of every row, for a column that the file does not have. */
  readonly value?: WordValue | null | undefined;
  readonly unit?: string | null | undefined;
  readonly decimal?: "." | "," | null | undefined;
  readonly dates?: DateOrder | null | undefined;
  readonly twoDigitYearsFrom?: number | null | undefined;
  /** What texts of the file mean in the table. */
  readonly words?: Readonly<Record<string, WordValue | null>> | undefined;
  /** Texts that mean that nothing was recorded. */
  readonly missing?: readonly string[] | undefined;
  /** What parts several codes in one cell; `;` when left out. */
  readonly separator?: string | undefined;
}

/** How files of another make become rows of a table. */
export interface FileMapping {
  /** One file, or several that are made alike. */
  readonly file: string | readonly string[];
  readonly delimiter?: "," | ";" | "tab" | "|" | null | undefined;
  readonly encoding?: Encoding | null | undefined;
  readonly decimal?: "." | "," | null | undefined;
  readonly dates?: DateOrder | null | undefined;
  readonly twoDigitYearsFrom?: number | null | undefined;
  /** For a file with one row a visit: how each foot is spelt where `{foot}` stands in a header. */
  readonly feet?: Partial<Readonly<Record<Foot, string | readonly string[] | undefined>>> | null | undefined;
  /** Header alone, or the whole of it, by the column of the table. */
  readonly columns?: Readonly<Record<string, string | readonly string[] | ColumnMapping | null | undefined>> | undefined;
  /** Headers of further columns to keep as they are, in `extra` of each record. */
  readonly extra?: readonly string[] | undefined;
}

/** The files of a study by what their rows are. */
export type FilesMapping = Partial<Readonly<Record<TableKind, readonly FileMapping[] | undefined>>>;
