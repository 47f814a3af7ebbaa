import type { DataReport, IssueCount } from "../study/DataReport.js";
import type { Issue } from "../study/Issue.js";

/** One kind of fault in one column of one file. */
export interface FaultGroup extends IssueCount {
  /** Those that are listed, in line order; never more than `count`. */
  readonly examples: readonly Issue[];
}

const severities = ["set_aside", "cell_blanked", "warning"] as const;

/** The faults of a report by problem and column: what cost rows first, then cells, then nothing; within these the most frequent, then the first met. @private */
export function faultGroups({ counts, issues }: DataReport): FaultGroup[] {
  const order = new Map(issues.map((issue, index) => [issue, index]));
  const first = ({ examples }: FaultGroup) => (examples[0] === undefined ? Infinity : (order.get(examples[0]) ?? Infinity));
  return counts
    .map((count): FaultGroup => {
      const { file, code, column, severity } = count;
      const same = (each: Issue) =>
        each.file === file && each.code === code && each.column === column && each.severity === severity;
      return { ...count, examples: issues.filter(same) };
    })
    .sort((a, b) => severities.indexOf(a.severity) - severities.indexOf(b.severity) || b.count - a.count || first(a) - first(b));
}
