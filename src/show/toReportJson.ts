import { studyVerdict } from "../read/studyVerdict.js";
import type { DataReport } from "../study/DataReport.js";

/** The report of reading a study for machines: JSON with `verdict` (see `studyVerdict`) before `inputs`, `flow`, `counts` and `issues`. */
export function toReportJson(report: DataReport): string {
  const { inputs, flow, counts, issues } = report;
  return JSON.stringify({ verdict: studyVerdict(report), inputs, flow, counts, issues }, null, 2);
}
