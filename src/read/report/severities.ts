import type { Severity } from "../../study/Issue.js";
import type { Fault } from "./Fault.js";

const of =
  (severity: Severity) =>
  (code: string, found: string, hint: string): Fault => ({ code, severity, found, hint });

/** Makes a fault that costs the row, one that costs the cell, and one to look at that costs nothing. */
export const severities = { setAside: of("set_aside"), blanked: of("cell_blanked"), warning: of("warning") } as const;
