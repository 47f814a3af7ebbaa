import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test, vi } from "vitest";
import type { NotebookOutput } from "../../src/run/Notebook.js";
import { NotebookError } from "../../src/run/NotebookError.js";
import { type RunOptions, runNotebook } from "../../src/run/runNotebook.js";
import { isRunning } from "./isRunning.js";
import { notebookOf } from "./notebookOf.js";
import { schemaFaults } from "./schemaFaults.js";

// Each of these starts kernels, about two seconds of processor time apiece.
vi.setConfig({ testTimeout: 120_000 });

const folder = mkdtempSync(join(tmpdir(), "underfoot-test-"));
// A temporary folder of its own, so that what is left there is this test's.
const temporary = join(folder, "temporary");
mkdirSync(temporary);
vi.stubEnv("TMPDIR", temporary);
afterAll(() => {
  vi.unstubAllEnvs();
  rmSync(folder, { recursive: true, force: true });
});

/** First cell of every notebook here: it leaves the id of the kernel's process behind. */
const first = 'import { writeFileSync } from "node:fs"; writeFileSync("pid", String(process.pid)); console.log("first");';

/** Runs a notebook that must fail, and checks what holds for every failure: a typed error, valid evidence, no process, no file left. */
async function failing(sources: readonly string[], options: Partial<RunOptions> = {}): Promise<NotebookError> {
  const error: unknown = await runNotebook(notebookOf(first, ...sources), { folder, ...options }).catch(
    (thrown: unknown) => thrown,
  );
  if (!(error instanceof NotebookError)) throw new Error(`expected a NotebookError, not ${String(error)}`);
  const pid = Number(readFileSync(join(folder, "pid"), "utf8"));
  rmSync(join(folder, "pid"));
  expect(isRunning(pid), "the kernel is gone").toBe(false);
  expect(readdirSync(temporary), "the connection file is gone").toEqual([]);
  expect(schemaFaults(error.notebook)).toEqual([]);
  return error;
}

function outputsOf(error: NotebookError, cell: number): readonly NotebookOutput[] {
  const found = error.notebook?.cells[cell - 1];
  return found?.cell_type === "code" ? found.outputs : [];
}
const printed = (text: string) => ({ output_type: "stream", name: "stdout", text });

test("a type error names the cell, the place in it and what is wrong; later cells do not run", async () => {
  const error = await failing(["\nconst n: number =\n  'text';\nmissing();", 'console.log("never");']);
  expect([error.code, error.cell]).toEqual([
    "cell_failed",
    { number: 2, id: "c2", firstLines: "const n: number =\n  'text';\nmissing();" },
  ]);
  // Line 2, column 7 of the cell; the wording is that of TypeScript 5.0, messages 2322 and 2304.
  expect(error.message).toMatch(/^Code cell 2 of 3 failed\.\nThe cell begins:\n {2}const n: number =\n/);
  expect(error.message).toContain("2:7 - Type 'string' is not assignable to type 'number'.");
  expect(error.message).toContain("4:1 - Cannot find name 'missing'.");
  expect(outputsOf(error, 1)).toEqual([printed("first\n")]);
  expect(outputsOf(error, 2)).toMatchObject([{ output_type: "stream", name: "stderr" }]);
  expect(outputsOf(error, 3)).toEqual([]);
  expect(error.notebook?.cells.map((cell) => (cell.cell_type === "code" ? cell.execution_count : null))).toEqual([1, 2, null]);
});

test("a thrown error ends the run, with what the cell had printed", async () => {
  const error = await failing(['console.log("so far"); throw new RangeError("no such yard: Ost");']);
  expect(error.code).toBe("cell_failed");
  expect(error.message).toContain("RangeError: no such yard: Ost");
  expect(error.message).not.toContain("runInThisContext");
  expect(error.kernelMessage).toContain("runInThisContext");
  expect(outputsOf(error, 2)[0]).toEqual(printed("so far\n"));
});

test("a loop without end is ended, and told apart from a cell that waits", async () => {
  const looping = await failing(["for (;;) {}"], { cellTimeoutMs: 1000 });
  expect([looping.code, looping.cell?.number]).toEqual(["cell_timeout", 2]);
  expect(looping.message).toContain("Code cell 2 of 2 did not end within 1 s. It computes without pause.");
  const waiting = await failing(["await new Promise(() => undefined);"], { runTimeoutMs: 2000 });
  expect(waiting.code).toBe("run_timeout");
  expect(waiting.message).toContain(
    "The 2 s for the whole notebook were over in code cell 2 of 2. It waits for something that does not come.",
  );
});

test("a kernel that ends by itself is told with how it ended", async () => {
  const exited = await failing(["process.exit(3);", "1"]);
  expect(exited.code).toBe("kernel_died");
  expect(exited.message).toContain("The notebook kernel ended with exit code 3 in code cell 2 of 3.");
  // After the last cell, too: its answer was "ok".
  const later = await failing(["setTimeout(() => process.exit(4), 50); undefined;"]);
  expect([later.code, later.cell]).toEqual(["kernel_died", null]);
});

test("a promise or timer nobody waits for fails the run, after the last cell too", async () => {
  const during = await failing([
    'Promise.reject(new Error("unseen")); undefined;',
    "await new Promise((done) => setTimeout(done, 50));",
  ]);
  expect(during.code).toBe("late_failure");
  expect(during.message).toContain("Error: unseen");
  const after = await failing(['setTimeout(() => { throw new Error("too late to see"); }, 30); undefined;']);
  expect([after.code, after.cell]).toEqual(["late_failure", null]);
  expect(after.message).toContain("Error: too late to see");
});

test("output the kernel drops, or without end, is a failure", async () => {
  // Whether the cell ends at once, or goes on and could say "ok" as if nothing were missing.
  const dropped = await failing([
    "for (let i = 0; i < 2000; i += 1) console.log(i); await new Promise((done) => setTimeout(done, 300));",
  ]);
  expect([dropped.code, dropped.cell?.number]).toEqual(["output_lost", 2]);
  const flood = 'for (;;) { console.log("x".repeat(100_000)); await new Promise((done) => setTimeout(done, 0)); }';
  const endless = await failing([flood], { outputLimitBytes: 1_000_000 });
  expect([endless.code, endless.cell?.number]).toEqual(["too_much_output", 2]);
  expect(endless.message).toContain("The output of the notebook passed 1 MB in code cell 2 of 2.");
});

test("the caller can end a run", async () => {
  const controller = new AbortController();
  const onProgress = ({ cell }: { cell: number }) => {
    if (cell === 2)
      setTimeout(() => {
        controller.abort();
      }, 100);
  };
  const error = await failing(["for (;;) {}"], { signal: controller.signal, onProgress });
  expect([error.code, error.cell?.number]).toEqual(["cancelled", 2]);
});

test("a folder that is not there, a wrong parameter and a broken notebook are refused before a kernel is started", async () => {
  const none = join(folder, "none");
  await expect(runNotebook(notebookOf("1"), { folder: none })).rejects.toMatchObject({ code: "no_folder" });
  await expect(runNotebook(notebookOf("1"), { folder, parameters: { a: 1 } })).rejects.toMatchObject({ code: "no_parameters" });
  await expect(runNotebook({ nbformat: 3 } as never, { folder })).rejects.toMatchObject({ code: "bad_notebook" });
});
