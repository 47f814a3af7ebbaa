import { ISSUES_KEPT } from "./issueLog.js";
import type { IssueCount } from "../../study/DataReport.js";
import type { Issue } from "../../study/Issue.js";
import type { Study } from "../../study/Study.js";

/**
 * The same study with more issues in its report, counted and listed as those of reading are: the most frequent count first, the issues in
 * file and line order and at most a hundred a count.
 */
export function withIssues(study: Study, issues: readonly Issue[]): Study {
  if (issues.length === 0) return study;
  const { report } = study;
  const counts = new Map<string, IssueCount>(report.counts.map((count) => [keyOf(count), count]));
  const kept = [...report.issues];
  for (const issue of issues) {
    const { file, code, column, severity } = issue;
    const count = (counts.get(keyOf(issue))?.count ?? 0) + 1;
    counts.set(keyOf(issue), { file, code, column, severity, count });
    if (count <= ISSUES_KEPT) kept.push(issue);
  }
  const files = ["study.json", ...report.inputs.map(({ file }) => file)];
  const rank = ({ file }: Issue) => (files.includes(file) ? files.indexOf(file) : files.length);
  return {
    ...study,
    report: {
      ...report,
      counts: [...counts.values()].sort((a, b) => b.count - a.count),
      issues: kept.sort((a, b) => rank(a) - rank(b) || (a.line ?? 0) - (b.line ?? 0)),
    },
  };
}

function keyOf({ file, code, column, severity }: Pick<Issue, "file" | "code" | "column" | "severity">): string {
  return [code, file, column ?? "", severity].join("\n");
}
