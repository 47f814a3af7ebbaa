import type { IssueCount } from "../../study/DataReport.js";
import type { Issue } from "../../study/Issue.js";
import type { Fault } from "./Fault.js";
import type { Place } from "./Place.js";
import { placedSentence } from "./placedSentence.js";
import { ownCopy } from "../text/ownCopy.js";

/** Of one fault in one column of one file, this many are listed one by one; all are counted. A frequent warning can never push out a hard fault. */
export const ISSUES_KEPT = 100;

const VALUE_SHOWN = 60;

/** Collects faults while reading. */
export interface IssueLog {
  add(fault: Fault, place: Place): void;
  /** Exact counts, the most frequent first; equal ones in the order they were met. */
  counts(): IssueCount[];
  /** The listed faults by file, in the order given, then by line; faults of a whole file first. */
  issues(fileOrder: readonly string[]): Issue[];
}

/** An empty log. */
export function issueLog(): IssueLog {
  const counts = new Map<string, IssueCount & { count: number }>();
  const kept: Issue[] = [];
  return {
    add({ code, severity, found, hint }, place) {
      const { file, line, row, column, value } = place;
      const key = `${code}\n${file}\n${column ?? ""}\n${severity}`;
      let entry = counts.get(key);
      if (entry === undefined) counts.set(key, (entry = { file, code, column, severity, count: 0 }));
      entry.count += 1;
      if (entry.count > ISSUES_KEPT) return;
      const cut = value === null ? null : ownCopy(value.slice(0, VALUE_SHOWN));
      kept.push({ file, line, row, column, value: cut, code, severity, message: placedSentence(place, found), hint });
    },
    counts: () => [...counts.values()].map((entry) => ({ ...entry })).sort((a, b) => b.count - a.count),
    issues(fileOrder) {
      const rank = (file: string) => fileOrder.indexOf(file);
      return [...kept].sort((a, b) => rank(a.file) - rank(b.file) || (a.line ?? 0) - (b.line ?? 0));
    },
  };
}
