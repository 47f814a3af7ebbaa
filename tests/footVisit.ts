import { fieldName } from "../src/study/fieldName.js";
import type { FootVisit } from "../src/study/FootVisit.js";
import { visitColumns } from "../src/study/visitColumns.js";

const empty = Object.fromEntries(visitColumns.map((column) => [fieldName(column.name), null])) as unknown as FootVisit;

/** A foot-visit for a test: horse A, near fore, routine; every cell not named is missing. */
export function footVisit(cells: Partial<FootVisit> = {}): FootVisit {
  return {
    ...empty,
    file: "visits.csv",
    line: 2,
    horseId: "A",
    visitDate: "2025-01-06",
    foot: "LF",
    reason: "routine",
    ...cells,
  };
}
