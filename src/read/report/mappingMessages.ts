import type { Fault } from "./Fault.js";
import { quoted } from "./quoted.js";

const warning = (code: string, found: string, hint: string): Fault => ({ code, severity: "warning", found, hint });
const did = (nearest: string | null) => (nearest === null ? "" : ` Was ${quoted(nearest)} meant?`);

/** Faults of what `study.json` says about files and their columns. */
export const mappingMessages = {
  headerAbsent: (column: string, headers: readonly string[], nearest: string | null) =>
    warning(
      "mapped_header_absent",
      `study.json reads ${column} from ${headers.map(quoted).join(" or ")}, and the file has no such header`,
      `Correct the header in study.json, or take the column out there.${did(nearest)}`,
    ),
  extraAbsent: (header: string, nearest: string | null) =>
    warning(
      "mapped_header_absent",
      `study.json keeps the column ${quoted(header)}, and the file has no such header`,
      `Correct the header in study.json, or take it out there.${did(nearest)}`,
    ),
  fileNotRead: () =>
    warning(
      "file_not_read",
      "the file is in the study folder and was not read",
      'Name it in study.json under "files" (a GHCN-Daily file under "weather"), or move it elsewhere; `underfoot draft` proposes how to read it.',
    ),
};
