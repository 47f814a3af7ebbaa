/**
 * What a fault costs: `set_aside` the whole row, `cell_blanked` one optional cell, `warning` nothing (the value is kept).
 */
export type Severity = "set_aside" | "cell_blanked" | "warning";

/** One fault found while reading: where it is, what was found, what it cost and what to do. */
export interface Issue {
  readonly file: string;
  /** Physical line, counted from 1; null when the fault belongs to the whole file. */
  readonly line: number | null;
  /** Data row, counted from 1 after the header; null when the fault belongs to the whole file. */
  readonly row: number | null;
  /** Header of the column; null when the fault belongs to the whole row. */
  readonly column: string | null;
  /** The text that was found, cut to 60 characters; null when nothing was there. */
  readonly value: string | null;
  /** Short stable name of the fault, snake case. */
  readonly code: string;
  readonly severity: Severity;
  /** One sentence: what was found. */
  readonly message: string;
  /** One sentence: what to do about it. */
  readonly hint: string;
}
