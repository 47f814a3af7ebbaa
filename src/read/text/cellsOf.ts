import { cellAt } from "./cellAt.js";
import type { CutRecord } from "./CutRecord.js";

/** The texts of all cells of a record. */
export function cellsOf(record: CutRecord): string[] {
  return Array.from({ length: record.width }, (_, index) => cellAt(record, index));
}
