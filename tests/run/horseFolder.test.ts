import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { horseFolder } from "../../src/run/horseFolder.js";
import { folderWith, heard, studyJson } from "./folders.js";

const files = {
  "study.json": studyJson,
  "visits.csv":
    "visit_date,horse_id,foot,thrush_grade\n2025-01-06,Bess/2,LF,3\n2025-02-17,Bess/2,LF,1\n2025-02-17,Captain,LF,1\n2025-03-31,Bess/2,LF,0\n",
  "horses.csv": "horse_id,yard_id,joined_on,left_on\nBess/2,Low,,2025-02-01\nBess/2,High,2025-02-02,\nCaptain,Low,,\n",
};

test("writes one sheet of one horse, under a name that is safe", async () => {
  const folder = folderWith(files);
  const terminal = heard();
  expect(await horseFolder(folder, "Bess/2", { out: join(folder, "out") }, terminal)).toBe(0);
  const page = readFileSync(join(folder, "out", "horse-Bess-2.html"), "utf8");
  expect(page).toContain("3 visits from 6 January 2025 to 31 March 2025");
  expect(page).not.toContain("Captain");
  expect(terminal.text()).toContain("horse-Bess-2.html");
});

test("of one yard, up to a day", async () => {
  const folder = folderWith(files);
  await horseFolder(folder, "Bess/2", { out: join(folder, "out"), yard: "High", asOf: "2025-03-01" }, heard());
  expect(readFileSync(join(folder, "out", "horse-Bess-2.html"), "utf8")).toContain("1 visit on 17 February 2025");
});

test("a horse that is not there, or was not seen: an error, and nothing written", async () => {
  const folder = folderWith(files);
  const out = join(folder, "out");
  await expect(horseFolder(folder, "Bes/2", { out }, heard())).rejects.toMatchObject({ code: "unknown_horse" });
  await expect(horseFolder(folder, "Bess/2", { out, asOf: "2024-01-01" }, heard())).rejects.toMatchObject({ code: "no_visits" });
  expect(existsSync(out)).toBe(false);
});
