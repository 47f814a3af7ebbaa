import type { CodeCell, NotebookOutput } from "./Notebook.js";

/** A code cell that is run, and what came of it so far. @private */
export interface CellRun {
  readonly cell: CodeCell;
  /** Place among the code cells that are run, from 1. */
  readonly number: number;
  /** Id of the request to the kernel; empty before it is sent. */
  requestId: string;
  /** Grows while the kernel runs. */
  outputs: readonly NotebookOutput[];
  /** The kernel's own number; null before its answer. */
  executionCount: number | null;
}
