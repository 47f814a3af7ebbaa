import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { paperFolder } from "../../src/run/paperFolder.js";
import { folderWith, heard, studyJson } from "./folders.js";

const visits = "visit_date,horse_id,foot,thrush_grade\n2025-01-06,Bess,LF,1\n2025-02-20,Bess,LF,0\n";

test("writes what these records can carry, and says what was left out and why", async () => {
  const folder = folderWith({ "study.json": studyJson, "visits.csv": visits });
  const terminal = heard();
  const out = join(folder, "out");
  expect(await paperFolder(folder, { out, runs: "1" }, terminal)).toBe(0);
  expect(readdirSync(out)).toContain("study-records-figure-1.png");
  expect(readFileSync(join(out, "methods.md"), "utf8")).toContain("Not done: 1 horse has a graded frog; 5 are needed.");
  expect(terminal.text()).toMatch(/^Wrote \d+ files and contents\.csv/);
  expect(terminal.text()).toContain("Left out rain-effect: 1 horse has a graded frog; 5 are needed.\n");
});

test("no visit, or no number of runs: refused, and nothing is written", async () => {
  const folder = folderWith({ "study.json": studyJson, "visits.csv": "visit_date,horse_id,foot\n" });
  const out = join(folder, "out");
  await expect(paperFolder(folder, { out }, heard())).rejects.toMatchObject({ code: "no_visits" });
  await expect(paperFolder(folder, { out, runs: "many" }, heard())).rejects.toMatchObject({ code: "not_a_count" });
  expect(existsSync(out)).toBe(false);
});
