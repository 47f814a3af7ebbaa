import { expect, test } from "vitest";
import { newStudyFiles } from "../../src/read/newStudyFiles.js";
import { whatToFillIn } from "../../src/read/whatToFillIn.js";
import { fileTables } from "../../src/study/fileTables.js";
import { faults, studyFrom } from "./folder.js";

const files = (name: string) => Object.fromEntries(newStudyFiles(name).map(({ path, text }) => [path, text]));

test("study.json and one file per table, each with its columns in order", () => {
  const made = files("Spring");
  expect(Object.keys(made)).toEqual([
    "study.json",
    "visits.csv",
    "horses.csv",
    "yards.csv",
    "changes.csv",
    "weather.csv",
    "outlines.csv",
  ]);
  expect(made["changes.csv"]).toBe("yard_id,changed_on,what\n");
  for (const { file, columns } of fileTables) expect(made[file]?.trimEnd().split(",")).toEqual(columns.map(({ name }) => name));
});

test("the new folder can be read, has no rows, and asks for the choice that was left open", async () => {
  const study = await studyFrom(files('The "old" mill'));
  expect(study.name).toBe('The "old" mill');
  expect(study.visits).toEqual([]);
  expect(faults(study)).toEqual([
    "study.json:- - gauge_day_not_stated warning",
    ...["visits", "horses", "yards", "changes", "weather", "outlines"].map((kind) => `${kind}.csv:- - no_rows warning`),
  ]);
  expect(whatToFillIn(study)).toHaveLength(7);
});

test("a new folder in which only visits.csv is filled in keeps every visit", async () => {
  const made = files("Spring");
  const row = { visit_date: "2025-03-01", horse_id: "Ash", foot: "near hind", thrush_grade: "2" } as Readonly<
    Record<string, string>
  >;
  const cells = (made["visits.csv"] ?? "")
    .trim()
    .split(",")
    .map((name) => row[name] ?? "");
  const study = await studyFrom({ ...made, "visits.csv": `${made["visits.csv"] ?? ""}${cells.join(",")}\n` });
  expect(study.visits).toMatchObject([{ foot: "LH", thrushGrade: 2, hoofWidthMm: null }]);
});
