import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { checkFolder } from "../../src/run/checkFolder.js";
import { newFolder } from "../../src/run/newFolder.js";
import { folderWith, heard } from "./folders.js";

test("makes a study whose check says what to fill in", async () => {
  const folder = join(folderWith(), "my-yards");
  expect(await newFolder(folder, heard())).toBe(0);
  expect(readFileSync(join(folder, "visits.csv"), "utf8")).toMatch(/^visit_date,horse_id,foot,/);
  const terminal = heard();
  expect(await checkFolder(folder, {}, terminal)).toBe(2);
  expect(terminal.text()).toMatch(
    /- Fill in visits\.csv: one row is one foot at one visit; visit_date, horse_id and\s+foot are needed/,
  );
});

test("writes over nothing", async () => {
  const folder = folderWith({ "visits.csv": "mine" });
  await expect(newFolder(folder, heard())).rejects.toThrow("already there");
  expect(readdirSync(folder)).toEqual(["visits.csv"]);
  expect(readFileSync(join(folder, "visits.csv"), "utf8")).toBe("mine");
});
