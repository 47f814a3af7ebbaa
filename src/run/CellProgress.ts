/** Told before each cell that is run. @private */
export interface CellProgress {
  /** Place among the code cells that are run, from 1. */
  readonly cell: number;
  /** How many there are. */
  readonly cells: number;
  /** First line of the cell that says something. */
  readonly firstLine: string;
}
