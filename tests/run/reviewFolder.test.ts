import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { reviewFolder } from "../../src/run/reviewFolder.js";
import { folderWith, heard, studyJson } from "./folders.js";

const visits = (grades: readonly string[]) =>
  `visit_date,horse_id,foot,thrush_grade\n${grades.map((grade, i) => `2025-01-06,Horse ${i} <b>,LF,${grade}\n`).join("")}`;

test("writes the page with the numbers of the study, names escaped", async () => {
  const folder = folderWith({
    "study.json": studyJson,
    "visits.csv": visits(["1", "0", "0", "0", "0", "0", "0", "0", "0", "1"]),
  });
  const terminal = heard();
  expect(await reviewFolder(folder, { out: join(folder, "out") }, terminal)).toBe(0);
  const page = readFileSync(join(folder, "out", "season-review.html"), "utf8");
  // Wilson 95 % limits of 2/10, R 4.2.2 prop.test(2, 10, correct = FALSE): 0.0567, 0.5098.
  expect(page).toContain("2 of 10 horses had thrush in at least one foot: 20% (95% interval 6% to 51%)");
  expect(page).not.toContain("<b>");
  expect(terminal.text()).toContain("10 rows read, 10 used, 0 set aside.");
});

test("one row is one row", async () => {
  const folder = folderWith({ "study.json": studyJson, "visits.csv": visits(["1"]) });
  const terminal = heard();
  expect(await reviewFolder(folder, { out: join(folder, "out") }, terminal)).toBe(0);
  expect(terminal.text()).toContain(": 1 row read, 1 used, 0 set aside.");
});

test("without a visit there is no page, not even a part of one", async () => {
  const folder = folderWith({ "study.json": studyJson, "visits.csv": visits([]) });
  await expect(reviewFolder(folder, { out: join(folder, "out") }, heard())).rejects.toThrow("nothing to review");
  expect(existsSync(join(folder, "out"))).toBe(false);
});
