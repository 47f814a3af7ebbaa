import type { Issue } from "./Issue.js";

/** What kind of rows a file holds. */
export type FileKind = "visits" | "horses" | "yards" | "changes" | "weather" | "outlines" | "stations";

/** One file that was read. `rowsRead` is always `accepted + setAside`. */
export interface InputFile {
  readonly file: string;
  readonly kind: FileKind;
  readonly bytes: number;
  /** SHA-256 of the file as it lies on disk, hex. */
  readonly sha256: string;
  readonly rowsRead: number;
  readonly accepted: number;
  readonly setAside: number;
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
