import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { yardFolder } from "../../src/run/yardFolder.js";
import { folderWith, heard, studyJson } from "./folders.js";

const files = {
  "study.json": studyJson,
  "visits.csv": "visit_date,horse_id,foot,next_interval_days\n2025-01-06,Bess,LF,42\n2025-02-17,Captain,LF,42\n",
  "horses.csv": "horse_id,yard_id\nBess,Low\nCaptain,High\n",
};

test("writes the page of the yard, as of the day given", async () => {
  const folder = folderWith(files);
  expect(await yardFolder(folder, "Low", { out: join(folder, "out"), asOf: "2025-03-01" }, heard())).toBe(0);
  const page = readFileSync(join(folder, "out", "yard-Low.html"), "utf8");
  // 6 January + 42 days is 17 February: 12 days over.
  expect(page).toContain("1 horse is over the date by more than 7 days: Bess (12 days)");
  expect(page).not.toMatch(/Captain|High|Two yards/);
});

test("a yard that is not there is an error, and nothing is written", async () => {
  const folder = folderWith(files);
  await expect(yardFolder(folder, "Lowe", { out: join(folder, "out") }, heard())).rejects.toMatchObject({ code: "unknown_yard" });
  expect(existsSync(join(folder, "out"))).toBe(false);
});
