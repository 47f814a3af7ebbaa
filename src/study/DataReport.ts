import type { Issue } from "./Issue.js";

/** What kind of rows a file holds. */
export type FileKind = "study" | "visits" | "horses" | "yards" | "changes" | "weather" | "outlines" | "stations";

/** How a column of a file was read by what `study.json` says. */
export interface ColumnUse {
  /** Column of the table; null for a column that is only kept. */
  readonly column: string | null;
  /** Headers it was read from: several in a file with a column for each foot, none for a value that all rows share. */
  readonly headers: readonly string[];
  /** What was done to its texts, in words; null: nothing. */
  readonly as: string | null;
}

/** How a file was read by what `study.json` says. */
export interface FileLayout {
  /** In a word: comma, semicolon, tab, upright stroke. */
  readonly delimiter: string;
  readonly encoding: string;
  /** Records that one row makes: 1, or the number of feet in a file with one row a visit. */
  readonly recordsARow: number;
  readonly columns: readonly ColumnUse[];
}

/**
 * One file that was read. `rowsRead` is always `accepted + setAside`; in a file with one row a visit all three count the feet. `study.json` itself holds no rows.
 */
export interface InputFile {
  readonly file: string;
  readonly kind: FileKind;
  readonly bytes: number;
  /** SHA-256 of the file as it lies on disk, hex. */
  readonly sha256: string;
  readonly rowsRead: number;
  readonly accepted: number;
  readonly setAside: number;
  /** The headers of a file with a column table, as they stand. */
  readonly headers?: readonly string[];
  /** How the file was read; only for a file that `study.json` names under `files`. */
  readonly layout?: FileLayout;
}

/** Read, accepted and set aside at one level. The parts always add up. */
export interface FlowCount {
  readonly read: number;
  readonly accepted: number;
  readonly setAside: number;
}

/** Where every record of the visits went, at each level. A visit, horse or yard is accepted when at least one of its foot rows is. */
export interface RecordFlow {
  /** Rows of the visit files: one foot at one visit. */
  readonly footVisits: FlowCount;
  /** Distinct horse and date pairs. */
  readonly visits: FlowCount;
  /** Distinct horses named in visits. */
  readonly horses: FlowCount;
  /** Distinct yards of those horses. */
  readonly yards: FlowCount;
}

/** How often one fault occurred in one column of one file. */
export interface IssueCount {
  readonly file: string;
  readonly code: string;
  readonly column: string | null;
  readonly severity: Issue["severity"];
  readonly count: number;
}

/** What reading found: files, counts and faults. */
export interface DataReport {
  readonly inputs: readonly InputFile[];
  readonly flow: RecordFlow;
  /** Exact counts, the most frequent first. */
  readonly counts: readonly IssueCount[];
  /** The faults in file and line order; at most `ISSUES_KEPT` a count, so that a huge bad file cannot fill the memory. */
  readonly issues: readonly Issue[];
}
