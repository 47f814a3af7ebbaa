/** Where a fault is. */
export interface Place {
  readonly file: string;
  /** Physical line, counted from 1; null for the whole file. */
  readonly line: number | null;
  /** Data row, counted from 1 after the header; null for the whole file. */
  readonly row: number | null;
  /** Header of the column; null for the whole row or file. */
  readonly column: string | null;
  /** The text that was found; null when there was none. */
  readonly value: string | null;
}
