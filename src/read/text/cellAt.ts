import type { CutRecord } from "./CutRecord.js";

/** The text of one cell of a record; empty where the record has no such cell. */
export function cellAt({ text, width, bounds }: CutRecord, index: number): string {
  return index < 0 || index >= width ? "" : text.slice(bounds[2 * index], bounds[2 * index + 1]);
}
