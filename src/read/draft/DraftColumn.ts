import type { ColumnMapping } from "../mapping/FileMapping.js";

/** A question that the user must answer in `study.json`. */
export interface DraftQuestion {
  /** Path of the null that stands for the answer, under the mapping of the file: `columns.visit_date.dates`. */
  readonly path: string;
  readonly question: string;
}

/** How a column is proposed to be read. */
export interface DraftColumn {
  readonly mapping: ColumnMapping;
  /** What was recognised and on what evidence, one clause each. */
  readonly evidence: readonly string[];
  /** Paths are relative to the mapping of the column. */
  readonly questions: readonly DraftQuestion[];
}
