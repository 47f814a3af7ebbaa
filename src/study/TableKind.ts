import type { FileKind } from "./DataReport.js";

/** What kind of rows a file with a column table holds. */
export type TableKind = Exclude<FileKind, "study" | "stations">;
