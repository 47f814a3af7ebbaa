import { StudyError } from "../study/StudyError.js";
import type { Notebook } from "./Notebook.js";

/**
 * Why a notebook did not run through.
 * - `kernel_missing`: the kernel or its messaging library is not installed.
 * - `kernel_not_started`: the kernel ended, or gave no answer, before the first cell.
 * - `kernel_died`: the kernel ended by itself while the notebook ran.
 * - `cell_failed`: a cell did not compile, threw, or was not run because an earlier one failed.
 * - `cell_timeout`: one cell took longer than a cell may.
 * - `run_timeout`: the notebook took longer than it may.
 * - `late_failure`: something a cell started, but did not wait for, failed.
 * - `too_much_output`: more was printed than a notebook can hold.
 * - `output_lost`: the kernel says it is done, but what it printed did not all arrive.
 * - `cancelled`: the caller ended the run.
 */
export type NotebookErrorCode =
  | "kernel_missing"
  | "kernel_not_started"
  | "kernel_died"
  | "cell_failed"
  | "cell_timeout"
  | "run_timeout"
  | "late_failure"
  | "too_much_output"
  | "output_lost"
  | "cancelled";

/** The cell at which a run ended. */
export interface FailedCell {
  /** Place among the code cells that are run, from 1: the number in the margin of a notebook run from top to bottom. */
  readonly number: number;
  readonly id: string;
  /** The first lines of its source, to find it by. */
  readonly firstLines: string;
}

/** What a NotebookError knows besides its words. */
export interface NotebookErrorDetails {
  /** Null when the run ended before or after the cells. */
  readonly cell?: FailedCell | null;
  /** What the kernel said, as it said it; null when it said nothing. */
  readonly kernelMessage?: string | null;
  /** The notebook with the outputs of the cells that ran and of the one that failed; null before the first cell. */
  readonly notebook?: Notebook | null;
}

/** Thrown when a notebook does not run from the first cell to the last. No kernel is left behind when it is thrown. */
export class NotebookError extends StudyError {
  override readonly name = "NotebookError";
  declare readonly code: NotebookErrorCode;
  readonly cell: FailedCell | null;
  readonly kernelMessage: string | null;
  readonly notebook: Notebook | null;

  constructor(code: NotebookErrorCode, message: string, hint: string, details: NotebookErrorDetails = {}) {
    super(code, message, hint);
    this.cell = details.cell ?? null;
    this.kernelMessage = details.kernelMessage ?? null;
    this.notebook = details.notebook ?? null;
  }
}
