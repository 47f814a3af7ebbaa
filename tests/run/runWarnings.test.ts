import { expect, test } from "vitest";
import type { CellRun } from "../../src/run/CellRun.js";
import { runWarnings } from "../../src/run/runWarnings.js";
import { codeCell } from "./notebookOf.js";

const run = (number: number, stderr: string): CellRun => ({
  cell: codeCell("1", `c${number}`),
  number,
  requestId: `r${number}`,
  outputs: stderr === "" ? [] : [{ output_type: "stream", name: "stderr", text: stderr }],
  executionCount: number,
});

test("a quiet run has no warnings", () => {
  expect(runWarnings([run(1, ""), run(2, " \n")], () => false, "", 0)).toEqual([]);
});

test("each cell, what came after the last one, and strange messages are told", () => {
  const warnings = runWarnings([run(1, ""), run(2, "careful\n  now")], (id) => id === "r1", "tail\n", 2);
  expect(warnings.map(({ cell, message }) => `${cell ?? "-"}: ${message}`)).toEqual([
    expect.stringContaining("1: Code cell 1 printed after it had ended: put await"),
    "2: Code cell 2 wrote to the error stream: careful now",
    expect.stringMatching(/^-: Something was printed after the last cell had ended .*: tail$/),
    "-: 2 messages of the kernel could not be understood and were passed over.",
  ]);
});
