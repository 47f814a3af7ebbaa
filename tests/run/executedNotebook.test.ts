import { expect, test } from "vitest";
import type { CellRun } from "../../src/run/CellRun.js";
import { executedNotebook } from "../../src/run/executedNotebook.js";
import type { CodeCell } from "../../src/run/Notebook.js";
import { notebookOf } from "./notebookOf.js";

const old = notebookOf("1", "2");
const notebook = { ...old, cells: old.cells.map((cell) => ({ ...cell, execution_count: 9 })) };
const outputs: CellRun["outputs"] = [{ output_type: "stream", name: "stdout", text: "1\n" }];
const runs: CellRun[] = [{ cell: notebook.cells[0] as CodeCell, number: 1, requestId: "r", outputs, executionCount: 1 }];

test("cells that ran have outputs and a number; the others lose those of an earlier run", () => {
  const done = executedNotebook(notebook, runs, { name: "typescript", version: "3.7.2" });
  expect(done.cells.map((cell) => (cell.cell_type === "code" ? [cell.outputs, cell.execution_count] : []))).toEqual([
    [outputs, 1],
    [[], null],
  ]);
  expect(notebook.cells[0]?.execution_count).toBe(9);
});

test("kernel and language are filled in, without the version that is not the compiler's, and never replaced", () => {
  const language = { name: "typescript", version: "3.7.2", file_extension: ".ts" };
  expect(executedNotebook(notebook, [], language).metadata).toEqual({
    kernelspec: { display_name: "TypeScript", language: "typescript", name: "tslab" },
    language_info: { name: "typescript", file_extension: ".ts" },
  });
  const metadata = {
    title: "t",
    kernelspec: { name: "mine", display_name: "Mine" },
    language_info: { name: "typescript", version: "5.0.4" },
  };
  expect(executedNotebook({ ...notebook, metadata }, [], language).metadata).toEqual(metadata);
});
