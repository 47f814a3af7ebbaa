import type { visitColumns } from "../../study/visitColumns.js";

/** Cells of one row of visits.csv by header; what is not named is left empty. */
export type VisitCells = Partial<Record<(typeof visitColumns)[number]["name"], string | number>>;
