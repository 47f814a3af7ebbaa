import type { VisitCells } from "./VisitCells.js";

/** One row of visits.csv with what it is sorted by. */
export interface DistrictRow {
  readonly visitDate: string;
  readonly yardId: string;
  readonly horseId: string;
  readonly cells: VisitCells;
}
