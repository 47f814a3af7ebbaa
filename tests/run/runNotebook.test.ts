import { mkdtempSync, realpathSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { CellProgress } from "../../src/run/CellProgress.js";
import type { CodeCell, Notebook, NotebookOutput } from "../../src/run/Notebook.js";
import { type NotebookRun, runNotebook } from "../../src/run/runNotebook.js";
import { isRunning } from "./isRunning.js";
import { codeCell, notebookOf } from "./notebookOf.js";
import { schemaFaults } from "./schemaFaults.js";

// One run of the real kernel for everything a notebook may do that ends well.
const sources = {
  parameters: 'const yard: string | null = null;\nconst grade: 1 | 2 | 3 = 1;\nconst unset = "as it was";',
  use: "console.log(yard, grade, unset);",
  pid: 'import { spawn } from "node:child_process"; const left = spawn("sleep", ["1000"], { stdio: "ignore" }); left.unref(); console.log(process.pid, left.pid);',
  folder: "console.log(process.cwd());",
  empty: "  \n",
  result: "[1, 2].map((x) => x + 1)",
  mixed: 'console.log("a"); console.error("careful"); console.log("b"); console.log("c");',
  html: 'import { display } from "tslab"; display.html("<p>é 🐎</p>");',
  json: 'display.raw("application/vnd.vegalite.v5+json", { mark: "bar", data: { values: [{ a: 1 }] } } as any);',
  image: "display.png(Buffer.from([137, 80, 78, 71]));",
  update:
    'import { newDisplay } from "tslab"; const slot = newDisplay(); slot.text("first"); console.log("between"); slot.text("second");',
  unicode: 'console.log("Huf – 蹄 – 🐎 – \\u2028 – \\u0000");',
  redeclared: "const again = 1;",
  redeclaredOnce: "const again: string = 'two'; console.log(again);",
  big: 'console.log("é".repeat(2_500_000));',
  awaited: 'await new Promise((done) => setTimeout(done, 20)); console.log("waited");',
  loose: 'setTimeout(() => console.log("too late"), 400); await 0; undefined;',
  pause: "await new Promise((done) => setTimeout(done, 600));",
} as const;
const names = Object.keys(sources) as (keyof typeof sources)[];
const cells = names.map((name) => codeCell(sources[name], name, name === "parameters" ? ["parameters"] : []));
const title = { cell_type: "markdown", id: "title", metadata: {}, source: "# Title" } as const;
const notebook: Notebook = { ...notebookOf(), metadata: { title: "kept" }, cells: [title, ...cells] };

let [folder, run] = ["", null as NotebookRun | null];
const progress: CellProgress[] = [];
const before = structuredClone(notebook);

beforeAll(async () => {
  folder = realpathSync(mkdtempSync(join(tmpdir(), "underfoot-test-é ")));
  const parameters = { yard: "Nord", grade: 2 };
  run = await runNotebook(notebook, { folder, parameters, onProgress: (step) => progress.push(step) });
}, 120_000);
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

const cellOf = (id: string): CodeCell => {
  const cell = run?.notebook.cells.find((item) => item.id === id);
  if (cell?.cell_type !== "code") throw new Error(`no code cell ${id}`);
  return cell;
};
const outputsOf = (id: keyof typeof sources): readonly NotebookOutput[] => cellOf(id).outputs;
const printed = (text: string) => ({ output_type: "stream", name: "stdout", text });

test("the notebook that comes back is valid nbformat 4.5, and the one that went in is unchanged", () => {
  expect(schemaFaults(run?.notebook ?? null)).toEqual([]);
  expect(notebook).toEqual(before);
  expect(run?.notebook.metadata).toMatchObject({
    title: "kept",
    kernelspec: { name: "tslab" },
    language_info: { name: "typescript" },
  });
  expect(run?.notebook.cells[0]).toEqual(title);
});

test("cells are numbered as they ran; an empty one is passed over", () => {
  const ran = ["parameters", "injected-parameters", ...names.slice(1).filter((name) => name !== "empty")];
  expect(ran.map((id) => cellOf(id).execution_count)).toEqual(ran.map((_, i) => i + 1));
  expect([cellOf("empty").execution_count, cellOf("empty").outputs]).toEqual([null, []]);
  expect(run?.cellsRun).toBe(ran.length);
});

test("progress names each cell before it runs", () => {
  expect(progress.map((step) => step.cell)).toEqual(Array.from({ length: run?.cellsRun ?? 0 }, (_, i) => i + 1));
  expect(progress[2]).toEqual({ cell: 3, cells: run?.cellsRun, firstLine: sources.use });
});

test("parameters reach the cells, those not given stay, and the notebook shows both", () => {
  expect(outputsOf("use")).toEqual([printed("Nord 2 as it was\n")]);
  expect(cellOf("parameters").source).toBe(sources.parameters);
  expect(cellOf("injected-parameters").source).toContain('const yard: string | null = "Nord";\nconst grade: 1 | 2 | 3 = 2;');
});

test("the cells work in the folder given", () => {
  expect(outputsOf("folder")).toEqual([printed(`${folder}\n`)]);
});

test("text, errors, displays and results come back in the order they were made", () => {
  expect(outputsOf("result")).toEqual([printed("[ 2, 3 ]\n")]);
  expect(outputsOf("mixed")).toEqual([
    printed("a\n"),
    { output_type: "stream", name: "stderr", text: "careful\n" },
    printed("b\nc\n"),
  ]);
  expect(outputsOf("html")).toEqual([{ output_type: "display_data", data: { "text/html": "<p>é 🐎</p>" }, metadata: {} }]);
  const spec = { mark: "bar", data: { values: [{ a: 1 }] } };
  expect(outputsOf("json")).toEqual([
    { output_type: "display_data", data: { "application/vnd.vegalite.v5+json": spec }, metadata: {} },
  ]);
  expect(outputsOf("image")).toEqual([{ output_type: "display_data", data: { "image/png": "iVBORw==" }, metadata: {} }]);
  expect(outputsOf("update")).toEqual([
    { output_type: "display_data", data: { "text/plain": "second" }, metadata: {} },
    printed("between\n"),
  ]);
});

test("letters of every kind, large output and names declared again come through", () => {
  expect(outputsOf("unicode")).toEqual([printed("Huf – 蹄 – 🐎 – \u2028 – \u0000\n")]);
  expect(outputsOf("redeclaredOnce")).toEqual([printed("two\n")]);
  // 5 MB as UTF-8.
  const [big] = outputsOf("big");
  expect(big?.output_type === "stream" && big.text === `${"é".repeat(2_500_000)}\n`).toBe(true);
  expect(outputsOf("awaited")).toEqual([printed("waited\n")]);
});

test("errors that did not stop a cell, and output that came late, are warned of", () => {
  // Late output belongs to the cell the kernel runs when it is printed.
  expect(outputsOf("pause")).toEqual([printed("too late\n")]);
  const mixed = cellOf("mixed").execution_count;
  expect(run?.warnings).toEqual([{ cell: mixed, message: `Code cell ${mixed} wrote to the error stream: careful` }]);
});

test("the kernel is gone, and so is what it had started", () => {
  const [said] = outputsOf("pid");
  const pids = said?.output_type === "stream" ? said.text.trim().split(" ").map(Number) : [];
  expect(pids).toHaveLength(2);
  expect(pids.every((pid) => pid > 1)).toBe(true);
  expect(pids.map(isRunning)).toEqual([false, false]);
});
