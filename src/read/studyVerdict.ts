import type { DataReport } from "../study/DataReport.js";

/**
 * What reading a study cost: `rows_set_aside` when any row was, else `cells_blanked` when any cell was, else `clean`. Warnings cost nothing.
 */
export function studyVerdict(report: DataReport): "clean" | "cells_blanked" | "rows_set_aside" {
  if (report.inputs.some(({ setAside }) => setAside > 0)) return "rows_set_aside";
  return report.counts.some(({ severity }) => severity === "cell_blanked") ? "cells_blanked" : "clean";
}
