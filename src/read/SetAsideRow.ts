import type { Encoding } from "./text/Encoding.js";

/** A file of which rows are set aside: its header as it stands, and how it is written. */
export interface SetAsideFile {
  readonly file: string;
  readonly delimiter: string;
  readonly encoding: Encoding;
  /** The header as it stands in the file, and its cells; null for a file without a header. */
  readonly header: { readonly text: string; readonly cells: readonly string[] } | null;
}

/** A row that was set aside, as it stands in the file, and why. */
export interface SetAsideRow {
  /** Physical line on which it starts. */
  readonly line: number;
  /** The row without its last line end. */
  readonly text: string;
  /** The bytes of the row when the text does not give them back. */
  readonly bytes: Uint8Array | null;
  /** Its cells; null when it could not be split. */
  readonly cells: readonly string[] | null;
  /** Why, one sentence for each reason. */
  readonly reasons: readonly string[];
}

/** Takes the rows that are set aside while a study is read. */
export type SetAsideSink = (file: SetAsideFile, row: SetAsideRow) => void;
