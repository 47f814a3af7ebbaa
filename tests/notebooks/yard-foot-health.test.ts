import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { dueAndOver } from "../../src/answer/dueAndOver.js";
import { focusOn } from "../../src/answer/focusOn.js";
import { forTheVet } from "../../src/answer/forTheVet.js";
import { thrushNow } from "../../src/answer/thrushNow.js";
import { yardHorses } from "../../src/answer/yardHorses.js";
import { readStudy } from "../../src/read/readStudy.js";
import { readNotebook } from "../../src/run/readNotebook.js";
import { runNotebook } from "../../src/run/runNotebook.js";
import { escapeHtml } from "../../src/show/escapeHtml.js";
import { root } from "../repository/trackedFiles.js";

// Runs the notebook as it lies in the folder through the real kernel, with the library as built.
const folder = join(root, "notebooks");
const path = join(folder, "yard-foot-health.ipynb");

test("runs through on the demo, says what the library says of the yard, and names no other", { timeout: 180_000 }, async () => {
  const { notebook, warnings } = await runNotebook(await readNotebook(path), {
    folder,
    parameters: { yard: "Sallowmere", asOf: "2025-12-31" },
  });
  expect(warnings).toEqual([]);
  const outputs = notebook.cells.flatMap((cell) => (cell.cell_type === "code" ? cell.outputs : []));
  const html = outputs
    .map((output) => (output.output_type === "display_data" ? output.data["text/html"] : null))
    .filter((text) => typeof text === "string")
    .join("\n");
  const whole = await readStudy(join(root, "data-demo"));
  const study = focusOn(whole, { yardId: "Sallowmere", asOf: "2025-12-31" });
  const answers = [forTheVet, dueAndOver, yardHorses, thrushNow].map((ask) => ask(study));
  const sentences = answers.flatMap((answer) => (answer.kind === "answer" ? [answer.sentence] : []));
  expect(sentences).toHaveLength(4);
  expect(sentences.filter((sentence) => !html.includes(escapeHtml(sentence)))).toEqual([]);
  const order = sentences.map((sentence) => html.indexOf(escapeHtml(sentence)));
  expect([...order].sort((a, b) => a - b)).toEqual(order);
  const others = whole.yards.map(({ yardId }) => yardId).filter((yardId) => yardId !== "Sallowmere");
  const said = JSON.stringify(outputs);
  expect(others).toHaveLength(5);
  expect(others.filter((yardId) => said.includes(yardId))).toEqual([]);
});

test("a yard that the records do not name is an error that says so", { timeout: 180_000 }, async () => {
  const wrong = runNotebook(await readNotebook(path), { folder, parameters: { yard: "Oddly" } });
  await expect(wrong).rejects.toThrow("There is no yard Oddly in this study.");
});

test("the notebook lies in the folder without outputs", () => {
  const raw = JSON.parse(readFileSync(path, "utf8")) as {
    cells: { cell_type: string; outputs?: unknown[]; execution_count?: unknown }[];
  };
  const code = raw.cells.filter((cell) => cell.cell_type === "code");
  expect(code.every((cell) => cell.outputs?.length === 0 && cell.execution_count === null)).toBe(true);
});
