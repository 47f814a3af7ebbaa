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

test("a folder that is no study is refused in words", async () => {
  await expect(checkFolder("/there/is/none", {}, heard())).rejects.toMatchObject({ name: "StudyError" });
  await expect(checkFolder(folderWith(), {}, heard())).rejects.toMatchObject({
    name: "StudyError",
    message: expect.stringContaining("study.json") as string,
  });
});
