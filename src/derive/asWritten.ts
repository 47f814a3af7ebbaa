import type { Source } from "../study/Source.js";

/** Rows in the order in which they stand in their files, so that "the row written first" does not hang on how they are passed. @private */
export function asWritten<Row extends Pick<Source, "file" | "line">>(rows: readonly Row[]): readonly Row[] {
  if (rows.length < 2) return rows;
  return [...rows].sort((a, b) => (a.file === b.file ? a.line - b.line : a.file < b.file ? -1 : 1));
}
