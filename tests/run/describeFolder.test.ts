import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { describeFolder } from "../../src/run/describeFolder.js";
import { folderWith, heard, studyJson } from "./folders.js";

test("writes datapackage.json into the folder, over an old one", async () => {
  const visits = "visit_date,horse_id,foot\n2025-01-06,Bramble,LF\n";
  const folder = folderWith({ "study.json": studyJson, "visits.csv": visits, "datapackage.json": "old" });
  const terminal = heard();
  expect(await describeFolder(folder, terminal)).toBe(0);
  expect(terminal.text()).toContain("2 files, each with its size and SHA-256");
  const { resources } = JSON.parse(readFileSync(join(folder, "datapackage.json"), "utf8")) as { resources: { path: string }[] };
  expect(resources.map(({ path }) => path)).toEqual(["study.json", "visits.csv"]);
  await expect(describeFolder(folderWith(), heard())).rejects.toMatchObject({ code: "file_missing" });
});
