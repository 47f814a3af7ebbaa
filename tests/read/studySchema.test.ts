import { Ajv2020 } from "ajv/dist/2020.js";
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import * as zod from "zod";
import { newStudyFiles } from "../../src/read/newStudyFiles.js";
import { studyJsonSchema } from "../../src/read/studyJsonSchema.js";
import { studySchema } from "../../src/read/studySchema.js";

const validator = async () => new Ajv2020({ strict: false, allErrors: false }).compile(await studySchema());
const visits = (mapping: object) => ({ name: "T", files: { visits: [{ file: "v.csv", ...mapping }] } });
const column = (name: string, mapping: unknown) => visits({ columns: { [name]: mapping } });

const good: readonly object[] = [
  { name: "T" },
  { name: "T", gaugeDay: null, asOf: "2025-02-28", settings: { caseGrade: 2, rainWindowsDays: [7, 14] } },
  { name: "T", weather: [{ file: "w/rain.csv", format: "ghcn-dly", stations: { A: "B" } }] },
  { name: "T", gauges: [{ gauge: "G", latitudeDeg: -90 }], stationList: "list.txt" },
  visits({ delimiter: ";", encoding: "windows-1252", decimal: ",", dates: "day-month-year", twoDigitYearsFrom: 2000 }),
  visits({ feet: { LF: ["NF", "near fore"] }, columns: { thrush_grade: "{foot} thrush" }, extra: ["x"] }),
  column("hoof_width_mm", { header: ["w", "width"], unit: "in", missing: ["n/a"] }),
  column("thrush_grade", { header: null, words: { "++": 2, "?": null } }),
  column("observer_id", { value: "K" }),
];
const bad: readonly unknown[] = [
  [],
  {},
  { name: " " },
  { name: "T", files: { visit: [] } },
  { name: "T", gaugeDay: "morning" },
  { name: "T", asOf: "5.3.2025" },
  { name: "T", asOf: "2025-13-01" },
  { name: "T", settings: { caseGrade: 4 } },
  { name: "T", settings: { level: 1 } },
  { name: "T", settings: { lvel: 0.9 } },
  { name: "T", stationList: "../list.txt" },
  { name: "T", stationList: "a/../../list.txt" },
  { name: "T", stationList: "/etc/hosts" },
  { name: "T", stationList: "C:\\hosts" },
  { name: "T", stationList: "a\\..\\b" },
  { name: "T", files: { visits: [] } },
  visits({ delimiter: ":" }),
  visits({ encoding: "latin1" }),
  visits({ file: [] }),
  column("note", { unit: "mm" }),
  column("hoof_width_mm", { unit: "kg" }),
  column("thrush_grade", { words: { "+": 4 } }),
  column("bars", { words: { x: "levle" } }),
  column("bars", { words: { "": "level" } }),
  column("visit_date", 7),
  column("hoof", "h"),
];

test("ajv with the published schema and reading with its own checks accept and refuse the same", async () => {
  const validate = await validator();
  const own = studyJsonSchema(zod);
  for (const json of good) expect([json, validate(json), own.safeParse(json).success]).toEqual([json, true, true]);
  for (const json of bad) expect([json, validate(json), own.safeParse(json).success]).toEqual([json, false, false]);
});

test("what it cannot say is refused by reading only", async () => {
  const validate = await validator();
  const own = studyJsonSchema(zod);
  const lax = [
    { name: "T", asOf: "2025-02-30" },
    column("note", { header: "a", value: "b" }),
    visits({ feet: { LF: "x", RF: "x" } }),
  ];
  for (const json of lax) expect([json, validate(json), own.safeParse(json).success]).toEqual([json, true, false]);
});

test("the page of the docs is the schema, and a new study.json keeps to it (npm run docs)", async () => {
  const published = JSON.parse(readFileSync("docs/study.schema.json", "utf8")) as unknown;
  expect(published).toEqual(JSON.parse(JSON.stringify(await studySchema())));
  const text = newStudyFiles("Spring").find(({ path }) => path === "study.json")?.text ?? "";
  expect((await validator())(JSON.parse(text))).toBe(true);
  expect(text).toContain('"$schema": "./study.schema.json"');
});
