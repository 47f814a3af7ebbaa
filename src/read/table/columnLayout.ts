import type { Column } from "../../study/Column.js";
import type { Fault } from "../report/Fault.js";
import { messages } from "../report/messages.js";
import { nearestName } from "../report/nearestName.js";
import { refusals } from "../report/refusals.js";
import { codeWord } from "./codeWord.js";

/** Where the columns of a table stand in a row of a file. */
export interface ColumnLayout {
  /** Cells of a row. */
  readonly width: number;
  /** For each column of the table its index in the row, or -1 when the file does not have it. */
  readonly at: readonly number[];
}

/**
 * Finds the columns of a table in a header. Case, and spaces or hyphens for `_`, make no difference. A column that is not known or has no
 * name is reported once and left alone.
 *
 * @throws StudyError `header_missing` when a required column is not there, `header_duplicate` when a known one stands there twice.
 */
export function columnLayout(
  file: string,
  columns: readonly Column[],
  header: readonly string[],
  report: (fault: Fault, header: string) => void,
): ColumnLayout {
  const names = header.map(codeWord);
  const known = columns.map(({ name }) => name);
  const absent = known.filter((name) => !names.includes(name));
  const strangers = header.filter((_, index) => !known.includes(names[index] ?? ""));
  const missing = columns.filter(({ name, required }) => required && absent.includes(name)).map(({ name }) => name);
  if (missing.length > 0) {
    const nearest = nearestName(missing[0] ?? "", strangers.filter(Boolean));
    throw refusals.headerMissing(file, missing, header, nearest);
  }
  const twice = known.find((name) => names.indexOf(name) !== names.lastIndexOf(name));
  if (twice !== undefined) throw refusals.headerDuplicate(file, twice);
  header.forEach((name, index) => {
    if (name.trim() === "") report(messages.unnamedColumn(index + 1), "");
    else if (!known.includes(names[index] ?? "")) report(messages.unknownColumn(name, nearestName(name, absent)), name);
  });
  return { width: header.length, at: known.map((name) => names.indexOf(name)) };
}
