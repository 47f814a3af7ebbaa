import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parse } from "csv-parse/sync";
import { onTestFinished, expect, test } from "vitest";
import { draftStudy } from "../../src/read/draftStudy.js";
import { readStudy } from "../../src/read/readStudy.js";
import type { StudyDraft } from "../../src/read/StudyDraft.js";
import { inFolder } from "./folder.js";

const spreadsheets = join(import.meta.dirname, "..", "fixtures", "spreadsheets");

function copyOf(name: string): string {
  const folder = mkdtempSync(join(tmpdir(), "underfoot-"));
  onTestFinished(() => {
    rmSync(folder, { recursive: true, force: true });
  });
  cpSync(join(spreadsheets, name), folder, { recursive: true });
  return folder;
}

/** The draft with an answer in the place of each null, by path; an answer that was not asked for fails. */
function answered({ json, questions }: StudyDraft, answers: Readonly<Record<string, unknown>>): object {
  expect(questions.map(({ path }) => path).sort()).toEqual(Object.keys(answers).sort());
  const copy = structuredClone(json) as unknown as Record<string, unknown>;
  for (const [path, answer] of Object.entries(answers)) {
    const parts = path.split(".");
    const last = parts.pop() ?? "";
    let at = copy;
    for (const part of parts) at = at[part] as Record<string, unknown>;
    expect(at[last], path).toBeNull();
    at[last] = answer;
  }
  return copy;
}

const truth = parse(readFileSync(join(spreadsheets, "truth.csv")), { columns: true }) as unknown as Readonly<
  Record<string, string>
>[];
const number = (text: string | undefined) => (text === undefined || text === "" ? null : Number(text));

const column = "files.visits.0.columns";
const cases: readonly (readonly [string, Readonly<Record<string, unknown>>, number])[] = [
  [
    "long",
    { [`${column}.thrush_grade.words.-`]: 0, [`${column}.thrush_grade.words.+`]: 1, [`${column}.thrush_grade.words.++`]: 2 },
    0,
  ],
  ["wide", {}, 0],
  [
    "semicolon",
    {
      [`${column}.visit_date.dates`]: "day-month-year",
      [`${column}.visit_date.twoDigitYearsFrom`]: 2000,
      [`${column}.foot.words.vorne links`]: "LF",
      [`${column}.foot.words.vorne rechts`]: "RF",
      [`${column}.foot.words.hinten links`]: "LH",
      [`${column}.foot.words.hinten rechts`]: "RH",
      [`${column}.thrush_grade.words.nein`]: 0,
      [`${column}.thrush_grade.words.leicht`]: 1,
      [`${column}.thrush_grade.words.stark`]: 2,
      [`${column}.hoof_width_mm.unit`]: "cm",
      [`${column}.toe_length_mm.unit`]: "cm",
    },
    0,
  ],
  // Sixteenths of an inch are 1.5875 mm apart, so that a measure is off by half of that at most.
  ["inches", {}, 1.5875 / 2],
  [
    "seasons",
    {
      [`${column}.visit_date.twoDigitYearsFrom`]: 2000,
      [`${column}.thrush_grade.words.clear`]: 0,
      [`${column}.thrush_grade.words.smelly`]: 1,
      [`${column}.thrush_grade.words.ragged`]: 2,
      "files.horses.0.columns.shod.words.no": "bare",
      "files.horses.0.columns.shod.words.front": "fronts",
      "files.horses.0.columns.shod.words.all round": "all",
    },
    0,
  ],
];

test.each(cases)("the spreadsheet %s: drafted, answered and read, it says what the season was", async (name, answers, offMm) => {
  const folder = copyOf(name);
  const draft = await draftStudy(folder);
  const json = answered(draft, answers);
  writeFileSync(join(folder, "study.json"), JSON.stringify(draft.json));
  if (draft.questions.length > 0) {
    await expect(readStudy(folder, { today: "2025-06-30" })).rejects.toMatchObject({ code: "unanswered" });
  }
  writeFileSync(join(folder, "study.json"), JSON.stringify(json));
  const { visits, report } = await readStudy(folder, { today: "2025-06-30" });
  expect(report.counts.filter(({ severity }) => severity !== "warning")).toEqual([]);
  const key = (date = "", horse = "", foot = "") => `${date} ${horse} ${foot}`;
  const found = new Map(visits.map((visit) => [key(visit.visitDate, visit.horseId, visit.foot), visit]));
  expect(found.size).toBe(truth.length);
  for (const row of truth) {
    const visit = found.get(key(row["visit_date"], row["horse_id"], row["foot"]));
    expect(visit?.thrushGrade).toBe(number(row["thrush_grade"]));
    expect(Math.abs((visit?.toeLengthMm ?? NaN) - (number(row["toe_length_mm"]) ?? NaN))).toBeLessThanOrEqual(offMm);
    expect(Math.abs((visit?.hoofWidthMm ?? NaN) - (number(row["hoof_width_mm"]) ?? NaN))).toBeLessThanOrEqual(offMm);
  }
});

test("the evidence is told, with the line where it stands", async () => {
  const evidence = async (name: string) => (await draftStudy(copyOf(name))).notes.flatMap((note) => note.evidence);
  expect(await evidence("inches")).toEqual(
    expect.arrayContaining([
      'visit_date: month-day-year: "10/15/2024" (line 10) is a day in no other order',
      "it begins with the mark of UTF-16",
      'left out, since it may name people: "Owner phone"',
    ]),
  );
  expect(await evidence("semicolon")).toEqual(
    expect.arrayContaining(['it holds bytes that are no UTF-8; as Windows-1252 they read "Strahlf\u00e4ule"']),
  );
  expect(await evidence("wide")).toEqual(
    expect.arrayContaining([
      'one row a visit: LF is "NF", RF is "OF", LH is "NH", RH is "OH"',
      'not recognised, kept beside the records: "Weather"',
    ]),
  );
  const seasons = await draftStudy(copyOf("seasons"));
  expect(seasons.json.files?.visits).toMatchObject([{ file: ["2024.csv", "2025.csv"], delimiter: "|" }]);
  expect(seasons.json.files?.horses?.[0]?.columns).toMatchObject({ height_cm: { unit: "hands" }, weight_kg: { unit: "lb" } });
});

test("a study whose files are as the tables have them needs no mapping", async () => {
  const draft = await inFolder({ "visits.csv": "visit_date,horse_id,foot\n2025-03-01,Ash,LF\n" }, draftStudy);
  expect(draft.json.files).toBeUndefined();
  expect(draft.questions).toEqual([]);
  expect(draft.notes[0]?.evidence).not.toEqual([]);
});

test("an order of dates is asked when they contradict each other, a file without a gauge is asked for it, others are told", async () => {
  const draft = await inFolder(
    {
      "a.csv": "Date,Rain\n13/02/2025,4\n02/13/2025,1\n01/02/2025,1\n",
      "b.csv": "one,two\n1,2\n",
      "book.csv": Buffer.from([0x50, 0x4b, 3, 4, 0, 0]),
      "empty.csv": "",
      "visits.set-aside.csv": "visit_date,horse_id,foot\n",
    },
    draftStudy,
  );
  expect(draft.questions.map(({ path }) => path)).toEqual([
    "files.weather.0.columns.date.dates",
    "files.weather.0.columns.rain_mm.unit",
    "files.weather.0.columns.gauge_id.value",
  ]);
  expect(
    draft.notes.filter(({ rows }) => rows === null).map(({ files, evidence }) => `${files.join()}: ${evidence.join()}`),
  ).toEqual([
    'b.csv: its first line names no table: "one", "two"',
    "book.csv: book.csv: this is a workbook or an archive, not UTF-8 text.",
    "empty.csv: its first line names no table: it is empty",
  ]);
});

test("a folder that is not there, and a file in its place, are refused in words", async () => {
  await expect(draftStudy("/there/is/none")).rejects.toMatchObject({ code: "folder_missing" });
  await expect(draftStudy(join(spreadsheets, "truth.csv"))).rejects.toMatchObject({ code: "not_a_folder" });
});
