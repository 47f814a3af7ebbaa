import type { Severity } from "../../study/Issue.js";
import type { Fault } from "./Fault.js";
import { quoted } from "./quoted.js";

const fault = (severity: Severity, code: string, found: string, hint: string): Fault => ({ code, severity, found, hint });

/** A fault that costs the row. */
export const setAside = (code: string, found: string, hint: string) => fault("set_aside", code, found, hint);
/** A fault that costs the cell. */
export const blanked = (code: string, found: string, hint: string) => fault("cell_blanked", code, found, hint);
/** Something to look at that costs nothing. */
export const warning = (code: string, found: string, hint: string) => fault("warning", code, found, hint);
/** The end of a hint: what a misspelt name may have been meant for. */
export const did = (nearest: string | null) => (nearest === null ? "" : ` Was ${quoted(nearest)} meant?`);
