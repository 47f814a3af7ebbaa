import type { Severity } from "../../study/Issue.js";

/** What is wrong with a cell, a row or a file, without the place. */
export interface Fault {
  /** Short stable name of the fault, snake case. */
  readonly code: string;
  readonly severity: Severity;
  /** What was found, as a clause that can follow a colon. */
  readonly found: string;
  /** What to do about it, as a sentence. */
  readonly hint: string;
}
