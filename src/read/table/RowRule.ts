import type { Fault } from "../report/Fault.js";
import type { Draft } from "./Draft.js";
import type { RowFault } from "./rowDrafter.js";

/** Reports a fault of the row at hand, in one column (by its CSV header) or in the whole row. */
export type ReportFault = (fault: Fault, column?: string) => void;

/** What is checked of a row beyond its single cells. */
export interface RowRule<Row> {
  /** Told of every row that could be split into cells, also of one that is set aside for a bad cell, with the faults of its cells. */
  readonly seen?: (row: Draft<Row>, faults: readonly RowFault[]) => void;
  /** Whether a row whose required cells are good is accepted; the reasons are reported. May blank cells. */
  readonly accepts: (row: Draft<Row>, report: ReportFault) => boolean;
}
