import { withIssues } from "../read/report/withIssues.js";
import type { Study } from "../study/Study.js";
import { fabricChecks } from "./fabricChecks.js";
import { fabricCodes } from "./fabricCodes.js";

/**
 * The study with the doubts of `fabricChecks` in its report, counted and listed as the faults of reading are. Doubts of an earlier call are
 * replaced, so that a second call changes nothing.
 */
export function fabricChecked(study: Study): Study {
  const read = <Fault extends { readonly code: string }>(faults: readonly Fault[]) =>
    faults.filter(({ code }) => !(code in fabricCodes));
  const { report } = study;
  const afresh = { ...study, report: { ...report, counts: read(report.counts), issues: read(report.issues) } };
  return withIssues(afresh, fabricChecks(study));
}
