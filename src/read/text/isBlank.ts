import { cellAt } from "./cellAt.js";
import type { CutRecord } from "./CutRecord.js";

/** Whether the cells of a record from one on hold nothing but blanks. */
export function isBlank(record: CutRecord, from = 0): boolean {
  for (let index = from; index < record.width; index++) if (cellAt(record, index).trim() !== "") return false;
  return true;
}
