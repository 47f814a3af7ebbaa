import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { readNotebook } from "../../src/run/readNotebook.js";
import { root } from "../repository/trackedFiles.js";
import { kernelTalk, type KernelTalk } from "./kernelTalk.js";
import { notebookFolder, notebooks } from "./notebooks.js";

vi.setConfig({ testTimeout: 60_000, hookTimeout: 90_000 });

// What a front end asks the kernel while somebody writes a cell, and what a slip in a cell is answered with. The library is the built one.
let kernel: KernelTalk;
beforeAll(async () => {
  kernel = await kernelTalk();
  const first = 'import { focusOn, prevalence, readStudy, show, thrushNow, withSettings } from "underfoot";\nconst study = await readStudy("../data-demo");';
  expect(await kernel.run(first)).toEqual({ ok: true, said: "" });
});
afterAll(() => kernel.close());

test.each(notebooks)("%s says of its language what the kernel says, or JupyterLab would write that in and mark the file as changed", async (name) => {
  const { metadata } = await readNotebook(join(notebookFolder, name));
  expect(metadata["language_info"]).toEqual(kernel.language);
});

/** The first sentence of the doc comment of a function, as it stands in its source file. */
function firstWords(path: string): string {
  const before = readFileSync(`${root}/src/${path}.ts`, "utf8").split(/^export (?:async )?function/m)[0]!;
  const comment = before.slice(before.lastIndexOf("/**") + 3).replace(/^\s*\*\/? ?/gm, "").trim();
  return comment.split(/[.:]\s/)[0]!.replace(/\s+/g, " ").slice(0, 60);
}

test.each([
  ["read/readStudy", 'readStudy|("../data-demo")'],
  ["show/show", "await sho|w(study)"],
  ["study/withSettings", "with|Settings(study, {})"],
  ["estimate/prevalence", "prev|alence([])"],
])("hover help shows the doc comment of %s", async (path, code) => {
  const words = firstWords(path);
  expect(words.length).toBeGreaterThan(15);
  expect((await kernel.inspect(code)).replace(/\s+/g, " ")).toContain(words);
});

test("hover help on a field gives its meaning and unit", async () => {
  expect(await kernel.inspect("study.visits[0].toeAngle|Deg")).toMatch(/toeAngleDeg: number[^]*toe/i);
});

test.each([
  ['import { readS| } from "underfoot";', "readStudy"],
  ["study.visits[0].thrush|", "thrushGrade"],
  ["withSettings(study, { case| })", "caseGrade"],
  ["thrush|", "thrushNow"],
])("completion of %s offers %s", async (code, wanted) => {
  expect(await kernel.complete(code)).toContain(wanted);
});

// What somebody does wrong, and the words that say what to do.
test.each([
  ["a wrong column name", "study.visits.map((visit) => visit.thrushGrad)", "'thrushGrad' does not exist on type 'FootVisit'. Did you mean 'thrushGrade'?"],
  ["a misspelt setting", "withSettings(study, { caseGarde: 2 })", "Did you mean to write 'caseGrade'?"],
  ["a misspelt setting that comes from elsewhere", 'withSettings(study, JSON.parse(\'{ "caseGarde": 2 }\'))', "The settings are caseGrade, level"],
  ["a missing await", 'const later = readStudy("../data-demo"); later.visits.length', "on type 'NeedsAwait<Study>'"],
  ["a missing await, handed on", 'thrushNow(readStudy("../data-demo"))', "Argument of type 'NeedsAwait<Study>'"],
  ["a horse that does not exist", 'focusOn(study, { horseId: "Popy" })', "Did you mean Poppy?"],
  ["a folder that is not there", 'await readStudy("../my-yards")', "my-yards"],
  ["a function that was not called", "await show(JSON.parse as any)", "Call it: parse(study)."],
])("%s", async (_, code, words) => {
  const { ok, said } = await kernel.run(code);
  expect(ok).toBe(false);
  expect(said).toContain(words);
  // The way through the program is no help to whoever made the slip.
  expect(said).not.toMatch(/^\s+at /m);
});
