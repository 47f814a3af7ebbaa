import type { Outcome } from "./kernel/Kernel.js";
import type { KernelExit } from "./kernel/spawnKernel.js";
import type { NotebookErrorCode, NotebookErrorDetails } from "./NotebookError.js";
import { NotebookError } from "./NotebookError.js";

/** Why a run ended before its time. @private */
export type Failure =
  | Exclude<Outcome, { kind: "timeout" }>
  | { readonly kind: "timeout"; readonly loopTurns: boolean; readonly ofRun: boolean; readonly seconds: number }
  | { readonly kind: "loose_fault" }
  | { readonly kind: "too_much_output"; readonly bytes: number };

function exitInWords({ code, signal }: KernelExit): string {
  if (signal !== null) return `by the signal ${signal}`;
  return code === null ? "for a reason the system does not tell" : `with exit code ${code}`;
}

/** The kernel's message without the lines of the call stack, cut to what a terminal can show. */
function excerpt(text: string): string {
  const lines = text.split("\n").filter((line) => line.trim() !== "" && !/^\s+at .+[:)]/.test(line));
  const shown = lines.length > 12 ? ["…", ...lines.slice(-12)] : lines;
  return shown.map((line) => `\n  ${line.length > 300 ? `${line.slice(0, 300)}…` : line}`).join("");
}

/** [code, what happened, what to do]; `place` can follow "in". */
function told(failure: Failure, place: string, afterLast: boolean): readonly [NotebookErrorCode, string, string] {
  const Place = place.slice(0, 1).toUpperCase() + place.slice(1);
  switch (failure.kind) {
    case "reply":
      return failure.status === "error"
        ? ["cell_failed", `${Place} failed.`, "Mend the cell, or the data it reads, and run the notebook again."]
        : [
            "cell_failed",
            `${Place} was not run: the kernel answered "${failure.status}".`,
            "Something before it failed: mend that, and run the notebook again.",
          ];
    case "timeout": {
      const why = failure.loopTurns ? "It waits for something that does not come." : "It computes without pause.";
      const hint = "Mend the cell, or allow more time.";
      return failure.ofRun
        ? ["run_timeout", `The ${failure.seconds} s for the whole notebook were over in ${place}. ${why}`, hint]
        : ["cell_timeout", `${Place} did not end within ${failure.seconds} s. ${why}`, hint];
    }
    case "output_lost":
      return [
        "output_lost",
        `Not all that was printed in ${place} arrived.`,
        "The kernel drops output when a cell prints more than some 500 times, in Jupyter too: print a table, or one text with line breaks.",
      ];
    case "died":
      return [
        "kernel_died",
        `The notebook kernel ended ${exitInWords(failure.exit)} in ${place}.`,
        "Look for process.exit in the cell; a kernel that ends by itself often ran out of memory.",
      ];
    case "aborted":
      return ["cancelled", `The run was ended from outside in ${place}.`, "Run it again when it suits."];
    case "loose_fault":
      return [
        "late_failure",
        afterLast
          ? "Something that a cell had started and not waited for failed after the last cell."
          : `Something that ${place}, or a cell before it, had started and not waited for failed.`,
        "Put await before every call that returns a promise.",
      ];
    case "too_much_output": {
      const size = `${Math.round(failure.bytes / 1e5) / 10} MB`;
      return ["too_much_output", `The output of the notebook passed ${size} in ${place}.`, "Print a summary instead."];
    }
  }
}

/** The error for a run that ended at `details.cell`, or after the last cell when that is null. */
export function runFailure(failure: Failure, cells: number, details: NotebookErrorDetails): NotebookError {
  const cell = details.cell ?? null;
  const place = cell === null ? "the check after the last cell" : `code cell ${cell.number} of ${cells}`;
  const [code, what, hint] = told(failure, place, cell === null);
  const begins = cell === null ? "" : `\nThe cell begins:${excerpt(cell.firstLines)}`;
  const message = details.kernelMessage ?? null;
  const says = message === null || message.trim() === "" ? "" : `\nThe kernel says:${excerpt(message)}`;
  return new NotebookError(code, what + begins + says, hint, details);
}
