import { expect, test } from "vitest";
import { NotebookError } from "../../src/run/NotebookError.js";
import { type Failure, runFailure } from "../../src/run/runFailure.js";

const cell = { number: 2, id: "c2", firstLines: "const x = 1;\nf(x);" };

test("the message holds the cell, its first lines and what the kernel said, without the call stack", () => {
  const error = runFailure({ kind: "reply", status: "error", executionCount: 2 }, 3, {
    cell,
    kernelMessage: "Error: boom\n    at evalmachine.<anonymous>:2:7\n    at Script.runInThisContext (node:vm:135:14)\n",
  });
  expect(error).toBeInstanceOf(NotebookError);
  expect(error.message).toBe(
    "Code cell 2 of 3 failed.\nThe cell begins:\n  const x = 1;\n  f(x);\nThe kernel says:\n  Error: boom",
  );
  expect([error.name, error.code, error.cell, error.notebook]).toEqual(["NotebookError", "cell_failed", cell, null]);
});

const cases: [Failure, string, RegExp][] = [
  [
    { kind: "reply", status: "abort", executionCount: null },
    "cell_failed",
    /^Code cell 2 of 3 was not run: the kernel answered "abort"\./,
  ],
  [
    { kind: "timeout", loopTurns: true, ofRun: false, seconds: 1.5 },
    "cell_timeout",
    /did not end within 1.5 s\. It waits for something/,
  ],
  [
    { kind: "timeout", loopTurns: false, ofRun: true, seconds: 9 },
    "run_timeout",
    /^The 9 s for the whole notebook .* It computes without pause/,
  ],
  [
    { kind: "died", exit: { code: 3, signal: null }, lastWords: "" },
    "kernel_died",
    /^The notebook kernel ended with exit code 3 in code cell 2/,
  ],
  [{ kind: "died", exit: { code: null, signal: "SIGKILL" }, lastWords: "" }, "kernel_died", /ended by the signal SIGKILL/],
  [{ kind: "output_lost" }, "output_lost", /^Not all that was printed in code cell 2 of 3 arrived/],
  [{ kind: "aborted" }, "cancelled", /^The run was ended from outside in code cell 2 of 3/],
  [{ kind: "loose_fault" }, "late_failure", /^Something that code cell 2 of 3, or a cell before it, had started/],
  [{ kind: "too_much_output", bytes: 2_500_000 }, "too_much_output", /passed 2.5 MB in code cell 2 of 3/],
];

test.each(cases)("%j is %s", (failure, code, message) => {
  const error = runFailure(failure, 3, { cell });
  expect(error.code).toBe(code);
  expect(error.message).toMatch(message);
  expect(error.hint).not.toBe("");
});

test("after the last cell no cell is named", () => {
  expect(runFailure({ kind: "loose_fault" }, 3, {}).message).toBe(
    "Something that a cell had started and not waited for failed after the last cell.",
  );
  expect(runFailure({ kind: "died", exit: { code: 0, signal: null }, lastWords: "" }, 3, {}).message).toMatch(
    /in the check after the last cell/,
  );
});

test("a long message of the kernel is cut to its end", () => {
  const lines = Array.from({ length: 40 }, (_, i) => `line ${i}`);
  const error = runFailure({ kind: "reply", status: "error", executionCount: 1 }, 1, { cell, kernelMessage: lines.join("\n") });
  expect(error.message).toContain("…\n  line 28\n");
  expect(error.message).not.toContain("line 27\n");
  expect(error.kernelMessage).toBe(lines.join("\n"));
});
