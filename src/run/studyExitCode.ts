import type { Study } from "../study/Study.js";
import { exitCodes } from "./exitCodes.js";

/** Exit code of a study that was read: 2 when it holds no visit, 1 when rows were set aside, 0 when every row was used. @private */
export function studyExitCode(study: Pick<Study, "visits" | "report">): number {
  if (study.visits.length === 0) return exitCodes.unusable;
  return study.report.inputs.some((input) => input.setAside > 0) ? exitCodes.setAside : exitCodes.clean;
}
