import { placedSentence } from "../../read/report/placedSentence.js";
import type { Issue } from "../../study/Issue.js";
import type { FabricCode } from "../fabricCodes.js";

/** What a check of the fabric found, and where. */
export interface FabricFinding {
  readonly file: string;
  /** Physical line of the row it is told by; null for the whole file. */
  readonly line: number | null;
  readonly column?: string;
  readonly code: FabricCode;
  /** What was found, with its numbers, as a clause that can follow a colon. */
  readonly found: string;
  /** What to do about it, as a sentence. */
  readonly hint: string;
}

/** The issue of a finding, a warning in the one pattern of every message. Nothing is known of the data row, so `row` is null. */
export function fabricIssue({ file, line, column, code, found, hint }: FabricFinding): Issue {
  const place = { file, line, column: column ?? null };
  return { ...place, row: null, value: null, code, severity: "warning", message: placedSentence(place, found), hint };
}
