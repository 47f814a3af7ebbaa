import { readFileSync, readdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { checkFolder } from "../../src/run/checkFolder.js";
import { draftFolder } from "../../src/run/draftFolder.js";
import { reviewFolder } from "../../src/run/reviewFolder.js";
import { folderWith, heard } from "./folders.js";

const book = ["Day;Horse;Foot;Thrush", "3.4.2025;Ash;NF;+", "25.4.2025;Ash;OF;0"].join("\n");

test("draft, answer, check, review", async () => {
  const folder = folderWith({ "book.csv": `${book}\n` });
  const terminal = heard();
  expect(await draftFolder(folder, terminal)).toBe(0);
  expect(terminal.text()).toContain('day-month-year: "25.4.2025" (line 3) is a day in no other order');
  expect(terminal.text()).toContain("files.visits.0.columns.thrush_grade.words.+");
  expect(
    terminal
      .text()
      .split("\n")
      .filter((line) => line.length > 80 && !line.includes(folder)),
  ).toEqual([]);
  expect(readdirSync(folder).sort()).toEqual(["book.csv", "study.json", "study.schema.json"]);
  await expect(checkFolder(folder, {}, heard())).rejects.toMatchObject({ code: "unanswered" });
  const json = join(folder, "study.json");
  writeFileSync(json, readFileSync(json, "utf8").replace('"+": null', '"+": 1'));
  const checked = heard();
  expect(await checkFolder(folder, {}, checked)).toBe(0);
  expect(checked.text()).toContain("All 2 rows used.");
  expect(await reviewFolder(folder, { out: join(folder, "out") }, heard())).toBe(0);
});

test("a study.json that is there is left alone: the draft goes beside it, and the next is refused", async () => {
  const folder = folderWith({ "book.csv": book, "study.json": "mine" });
  await draftFolder(folder, heard());
  expect(readFileSync(join(folder, "study.json"), "utf8")).toBe("mine");
  const draft = readFileSync(join(folder, "study.draft.json"), "utf8");
  await expect(draftFolder(folder, heard())).rejects.toMatchObject({ code: "already_there" });
  expect(readFileSync(join(folder, "study.draft.json"), "utf8")).toBe(draft);
});

test("where nothing is recognised nothing is written", async () => {
  const folder = folderWith({ "a.csv": "x,y\n1,2\n" });
  await expect(draftFolder(folder, heard())).rejects.toMatchObject({ code: "nothing_recognised" });
  expect(readdirSync(folder)).toEqual(["a.csv"]);
});
