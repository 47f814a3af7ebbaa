import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { seasonReview } from "../../src/answer/seasonReview.js";
import { readStudy } from "../../src/read/readStudy.js";
import type { Notebook } from "../../src/run/Notebook.js";
import { readNotebook } from "../../src/run/readNotebook.js";
import { runNotebook } from "../../src/run/runNotebook.js";
import { escapeHtml } from "../../src/show/escapeHtml.js";
import { root } from "../repository/trackedFiles.js";

// Runs the notebook as it lies in the folder through the real kernel, with the library as built.
const folder = join(root, "notebooks");
const path = join(folder, "season-review.ipynb");

type Display = Extract<Notebook["cells"][number], { cell_type: "code" }>["outputs"][number] & { readonly output_type: "display_data" };

function displays(notebook: Notebook): Display[] {
  const outputs = notebook.cells.flatMap((cell) => (cell.cell_type === "code" ? cell.outputs : []));
  return outputs.filter((output): output is Display => output.output_type === "display_data");
}

test("runs through on the demo, says what the library says, and draws every chart", { timeout: 120_000 }, async () => {
  const { notebook, warnings } = await runNotebook(await readNotebook(path), { folder });
  expect(warnings).toEqual([]);
  const shown = displays(notebook);
  const html = shown.map((display) => (typeof display.data["text/html"] === "string" ? display.data["text/html"] : "")).join("\n");
  const review = seasonReview(await readStudy(join(root, "data-demo")));
  expect(review.answers).toHaveLength(16);
  const unsaid = review.answers.filter(({ sentence }) => !html.includes(escapeHtml(sentence)));
  expect(unsaid.map(({ id }) => id)).toEqual([]);
  const charts = shown.filter((display) => "application/vnd.vegalite.v5+json" in display.data);
  expect(charts).toHaveLength(review.answers.flatMap((answer) => answer.charts).length);
  for (const { data, metadata } of charts) {
    expect(Object.keys(data).sort()).toEqual(["application/vnd.vegalite.v5+json", "image/png", "text/plain"]);
    expect(metadata["image/png"]).toMatchObject({ width: expect.any(Number) as number, height: expect.any(Number) as number });
  }
  expect(review.report.inputs.filter(({ sha256 }) => !html.includes(sha256))).toEqual([]);
});

test("parameters reach the study, and a misspelt one is an error", { timeout: 120_000 }, async () => {
  const { notebook } = await runNotebook(await readNotebook(path), { folder, parameters: { caseGrade: 2, asOf: "2025-12-31" } });
  const said = JSON.stringify(displays(notebook).map((display) => display.data));
  expect(said.includes("grade 2 or more on the project scale")).toBe(true);
  expect(said.includes("grade 1 or more on the project scale")).toBe(false);
  await expect(runNotebook(await readNotebook(path), { folder, parameters: { caseGarde: 2 } })).rejects.toMatchObject({ name: "StudyError" });
});

test("the notebook lies in the folder without outputs", () => {
  const raw = JSON.parse(readFileSync(path, "utf8")) as { cells: { cell_type: string; outputs?: unknown[]; execution_count?: unknown }[] };
  const code = raw.cells.filter((cell) => cell.cell_type === "code");
  expect(code.every((cell) => cell.outputs?.length === 0 && cell.execution_count === null)).toBe(true);
});
