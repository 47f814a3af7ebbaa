import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { parse } from "csv-parse/sync";
import { rainEffect } from "../../src/answer/rainEffect.js";
import { studyDeclaration } from "../../src/answer/studyDeclaration.js";
import { readStudy } from "../../src/read/readStudy.js";
import type { Notebook } from "../../src/run/Notebook.js";
import { readNotebook } from "../../src/run/readNotebook.js";
import { runNotebook } from "../../src/run/runNotebook.js";
import { escapeHtml } from "../../src/show/escapeHtml.js";
import { simulateSeasonStudy } from "../../src/simulate/simulateSeasonStudy.js";
import { seasonDesign } from "../simulate/seasonDesign.js";
import { root } from "../repository/trackedFiles.js";

// Runs the notebook as it lies in the folder through the real kernel, with the library as built.
const folder = join(root, "notebooks");
const path = join(folder, "wet-ground-and-frogs.ipynb");
const made = mkdtempSync(join(tmpdir(), "seattle-herd-"));
afterAll(() => {
  rmSync(made, { recursive: true });
});

function htmlOf(notebook: Notebook): string {
  const outputs = notebook.cells.flatMap((cell) => (cell.cell_type === "code" ? cell.outputs : []));
  const data = outputs.flatMap((output) => (output.output_type === "display_data" ? [output.data["text/html"]] : []));
  return data.filter((html) => typeof html === "string").join("\n");
}

test("runs through on the demo: the declaration comes before any estimate, and every part is there", { timeout: 300_000 }, async () => {
  const { notebook, warnings } = await runNotebook(await readNotebook(path), { folder, parameters: { runs: 2 } });
  expect(warnings).toEqual([]);
  const html = htmlOf(notebook);
  const study = await readStudy(join(root, "data-demo"));
  const [declaration, effect] = [studyDeclaration(study), rainEffect(study)];
  if (declaration.kind !== "answer" || effect.kind !== "answer") throw new Error("The demo has no answer.");
  const [at, then] = [declaration, effect].map(({ sentence }) => html.indexOf(escapeHtml(sentence)));
  expect(at).toBeGreaterThan(-1);
  expect(then).toBeGreaterThan(at!);
  expect(html).toContain("STROBE-Vet items");
});

/** A herd under the Seattle record of vega-datasets 3.2.1 as a study folder. */
function seattleFolder(): void {
  const text = readFileSync(join(root, "node_modules/vega-datasets/data/seattle-weather.csv"), "utf8");
  const record = parse<Record<"date" | "precipitation" | "temp_max" | "temp_min", string>>(text, { columns: true }).map((day) => ({
    ...day,
    date: day.date.replaceAll("/", "-"),
  }));
  const weather = record.map(({ date, precipitation }) => ({ gaugeId: "Seattle", date, rainMm: Number(precipitation) }));
  const design = { ...seasonDesign, yards: 4, horsesPerYard: 3, from: "2013-01-10", to: "2015-06-20", visitGapDays: 75, weather };
  const { rows } = simulateSeasonStudy({ ...design, truth: { ...seasonDesign.truth, rainPer10Mm14d: 0.25 } }, 12);
  const write = (name: string, lines: readonly (readonly unknown[])[]) => {
    writeFileSync(join(made, name), `${lines.map((line) => line.join(",")).join("\n")}\n`);
  };
  writeFileSync(join(made, "study.json"), JSON.stringify({ name: "A herd under the Seattle record", gaugeDay: "ends_on_date" }));
  write("weather.csv", [["gauge_id", "date", "rain_mm", "temp_min_c", "temp_max_c"], ...record.map((day) => ["Seattle", day.date, day.precipitation, day.temp_min, day.temp_max])]);
  write("yards.csv", [["yard_id", "gauge_id"], ...[...new Set(rows.map(({ yardId }) => yardId))].map((yard) => [yard, "Seattle"])]);
  const horses = new Map(rows.map(({ horseId, yardId }) => [horseId, yardId]));
  write("horses.csv", [["horse_id", "yard_id", "species"], ...[...horses].map(([horse, yard]) => [horse, yard, "horse"])]);
  write("visits.csv", [
    ["visit_date", "horse_id", "foot", "examined", "thrush_grade", "horn_colour"],
    ...rows.map((row) => [row.visitDate, row.horseId, row.foot, "yes", Number(row.thrush), row.darkHorn ? "dark" : "light"]),
  ]);
}

test("runs unchanged on a herd under the Seattle record, and finds the effect that was planted", { timeout: 300_000 }, async () => {
  seattleFolder();
  const { notebook } = await runNotebook(await readNotebook(path), { folder, parameters: { folder: made, runs: 2 } });
  const html = htmlOf(notebook);
  const effect = rainEffect(await readStudy(made));
  if (effect.kind !== "answer") throw new Error(effect.reason);
  expect(html).toContain(escapeHtml(effect.sentence));
  const declared = effect.tables[0]!.rows.find((row) => row["kind"] === "declared")!;
  expect(Number(declared["lower"]) < Math.exp(0.25) && Math.exp(0.25) < Number(declared["upper"])).toBe(true);
  // Nothing was changed at any yard: the part is skipped with its reason.
  expect(html).toContain("No yard has a dated change.");
});
