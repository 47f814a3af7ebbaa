import type { Source } from "../../study/Source.js";
import type { Fault } from "../report/Fault.js";
import { messages } from "../report/messages.js";

/** The fault of a row that repeats what an earlier one says; the file is named when it is another one. */
export function duplicateOf(what: string, first: Source, row: Source): Fault {
  return messages.duplicate(what, first.file === row.file ? null : first.file, first.line);
}
