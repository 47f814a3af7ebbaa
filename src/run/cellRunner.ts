import type { CellRun } from "./CellRun.js";
import type { Kernel, Outcome } from "./kernel/Kernel.js";
import type { NotebookError } from "./NotebookError.js";
import type { OutputCollector } from "./outputCollector.js";
import type { Failure } from "./runFailure.js";
import { streamText } from "./streamText.js";

/** What a cell may take. @private */
export interface CellLimits {
  readonly cellTimeoutMs: number;
  /** For all cells together. */
  readonly runTimeoutMs: number;
  readonly outputBytes: number;
}

/**
 * A function that runs one cell after another and throws what `failure` makes of it when one did not run. A cell has run when
 * the kernel answers "ok" with the number of this cell: it counts a cell when it starts to run it, so an answer without the
 * right number is one for a cell that was dropped.
 */
export function cellRunner(
  kernel: Kernel,
  collector: OutputCollector,
  limits: CellLimits,
  signal: AbortSignal,
  failure: (failure: Failure, run: CellRun, said: string) => NotebookError,
): (run: CellRun) => Promise<void> {
  const startedAt = performance.now();

  function failureOf(outcome: Outcome, leftMs: number): Failure {
    if (outcome.kind === "aborted" && collector.bytes() > limits.outputBytes) {
      return { kind: "too_much_output", bytes: limits.outputBytes };
    }
    if (outcome.kind !== "timeout") return outcome;
    const ofRun = leftMs < limits.cellTimeoutMs;
    return { ...outcome, ofRun, seconds: (ofRun ? limits.runTimeoutMs : limits.cellTimeoutMs) / 1000 };
  }

  return async (run) => {
    const leftMs = Math.max(1, limits.runTimeoutMs - (performance.now() - startedAt));
    const outcome = await kernel.execute(run.cell.source, {
      timeoutMs: Math.min(limits.cellTimeoutMs, leftMs),
      signal,
      started: (id) => {
        run.requestId = id;
        run.outputs = collector.begin(id);
      },
    });
    collector.close(run.requestId);
    if (outcome.kind === "reply") run.executionCount = outcome.executionCount;
    if (outcome.kind !== "reply" || outcome.status !== "ok" || outcome.executionCount !== run.number) {
      const said = streamText(run.outputs, "stderr") + (outcome.kind === "died" ? outcome.lastWords : "");
      throw failure(failureOf(outcome, leftMs), run, said);
    }
    const [fault] = collector.looseFaults();
    if (fault !== undefined) throw failure({ kind: "loose_fault" }, run, fault);
  };
}
