/** Where a record came from, so that any number can be traced back to a line of a file. */
export interface Source {
  /** File name inside the study folder. */
  readonly file: string;
  /** Physical line on which the row starts, counted from 1; quoted line breaks count. */
  readonly line: number;
  /** Columns that `study.json` asks to keep as they are, by header; a blank cell is null. Absent when it asks for none. */
  readonly extra?: Readonly<Record<string, string | null>>;
}
