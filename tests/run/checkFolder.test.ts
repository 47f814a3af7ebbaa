import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { checkFolder } from "../../src/run/checkFolder.js";
import { folderWith, heard, studyJson } from "./folders.js";

const visits = "visit_date,horse_id,foot,thrush_grade\n2025-01-06,Bramble,LF,1\n31/02/2025,Bramble,RF,0\n";

test("says what was set aside, with its line, and ends with 1", async () => {
  const terminal = heard();
  expect(await checkFolder(folderWith({ "study.json": studyJson, "visits.csv": visits }), {}, terminal)).toBe(1);
  expect(terminal.text()).toContain('visits.csv, line 3, column visit_date: "31/02/2025" is not a calendar day.');
  expect(
    terminal
      .text()
      .split("\n")
      .filter((line) => line.length > 80),
  ).toEqual([]);
});

test("a clean study ends with 0", async () => {
  const clean = visits.replace("31/02/2025", "2025-01-06");
  expect(await checkFolder(folderWith({ "study.json": studyJson, "visits.csv": clean }), {}, heard())).toBe(0);
});

test("for machines: the report, nothing else", async () => {
  const terminal = heard();
  await checkFolder(folderWith({ "study.json": studyJson, "visits.csv": visits }), { json: true }, terminal);
  const report = JSON.parse(terminal.text()) as {
    inputs: { file: string; rowsRead: number; accepted: number; setAside: number }[];
  };
  expect(report.inputs.find((input) => input.file === "visits.csv")).toMatchObject({ rowsRead: 2, accepted: 1, setAside: 1 });
});

test("into a folder: a page to read, and the rows set aside; with --json nothing but the report is printed", async () => {
  const folder = folderWith({ "study.json": studyJson, "visits.csv": visits });
  const out = join(folderWith(), "out");
  const terminal = heard();
  expect(await checkFolder(folder, { out }, terminal)).toBe(1);
  expect(terminal.text()).toMatch(/Wrote to .*:\n- data-check\.html\n- visits\.set-aside\.csv\n- visits\.set-aside\.txt\n$/);
  expect(readdirSync(out).sort()).toEqual(["data-check.html", "visits.set-aside.csv", "visits.set-aside.txt"]);
  expect(readFileSync(join(out, "visits.set-aside.txt"), "utf8")).toBe(
    "visit_date,horse_id,foot,thrush_grade\n31/02/2025,Bramble,RF,0\n",
  );
  expect(readFileSync(join(out, "data-check.html"), "utf8")).toContain("Two yards: what was read");
  const machine = heard();
  await checkFolder(folder, { out, json: true }, machine);
  expect(() => JSON.parse(machine.text()) as unknown).not.toThrow();
});

test("rows set aside, written beside the study, are not read as data; a refused study leaves nothing", async () => {
  const folder = folderWith({ "study.json": studyJson, "visits.csv": visits });
  await checkFolder(folder, { out: folder }, heard());
  const terminal = heard();
  await checkFolder(folder, { json: true }, terminal);
  expect(terminal.text()).not.toContain("file_not_read");
  const bad = folderWith({ "study.json": studyJson, "visits.csv": visits, "outlines.csv": "none" });
  const out = folderWith();
  await expect(checkFolder(bad, { out }, heard())).rejects.toMatchObject({ code: "header_missing" });
  expect(readdirSync(out)).toEqual([]);
});

test("a folder that is no study is refused in words", async () => {
  await expect(checkFolder("/there/is/none", {}, heard())).rejects.toMatchObject({ name: "StudyError" });
  await expect(checkFolder(folderWith(), {}, heard())).rejects.toMatchObject({
    name: "StudyError",
    message: expect.stringContaining("study.json") as string,
  });
});
