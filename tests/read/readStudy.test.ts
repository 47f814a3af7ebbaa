import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { mkdirSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { readStudy } from "../../src/read/readStudy.js";
import { defaultSettings } from "../../src/study/defaultSettings.js";
import { StudyError } from "../../src/study/StudyError.js";
import { faults, type Files, inFolder, refusalOf, studyFrom, today } from "./folder.js";
import { outlineFile } from "./outlineFile.js";

const visits = "visit_date,horse_id,foot,thrush_grade\n2025-03-01,Ash,LF,1\n2025-03-01,Ash,RF,0\n2025-03-08,Birch,LF,\n";
const horses = "horse_id,yard_id,species,birth_year\nAsh,Y1,horse,2012\nBirch,Y2,pony,2015\n";

const whole: Files = {
  "visits.csv": visits,
  "horses.csv": horses,
  "yards.csv": "yard_id,gauge_id\nY1,G1\nY2,G1\n",
  "changes.csv": "yard_id,changed_on,what\nY1,2025-02-01,new hardstanding\n",
  "weather.csv": "gauge_id,date,rain_mm,flag\nG1,2025-02-28,3.5,\nG1,2025-03-01,,trace\n",
  "outlines.csv": outlineFile("Ash", "2025-03-01"),
};

test("a whole study is read, with nothing to say about it", async () => {
  const study = await studyFrom(whole);
  expect(study.report.issues).toEqual([]);
  expect(study.name).toBe("Test");
  expect(study.settings).toEqual(defaultSettings);
  expect(study.visits[0]).toMatchObject({
    file: "visits.csv",
    line: 2,
    visitDate: "2025-03-01",
    horseId: "Ash",
    foot: "LF",
    thrushGrade: 1,
    hoofWidthMm: null,
  });
  expect(study.visits[2]?.thrushGrade).toBeNull();
  expect(study.horses[1]).toMatchObject({ horseId: "Birch", species: "pony", birthYear: 2015, weightKg: null, line: 3 });
  expect(study.yards).toHaveLength(2);
  expect(study.changes[0]).toMatchObject({ changedOn: "2025-02-01", what: "new hardstanding" });
  expect(study.weather.map(({ rainMm, flag }) => [rainMm, flag])).toEqual([
    [3.5, null],
    [0, "trace"],
  ]);
  expect(study.outlines[0]).toMatchObject({ ring: "wall", point: "1", yMm: 65 });
  expect(study.report.flow).toEqual({
    footVisits: { read: 3, accepted: 3, setAside: 0 },
    visits: { read: 2, accepted: 2, setAside: 0 },
    horses: { read: 2, accepted: 2, setAside: 0 },
    yards: { read: 2, accepted: 2, setAside: 0 },
  });
});

test("each file is named with its size and the hash of the bytes on disk", async () => {
  const study = await studyFrom(whole);
  expect(study.report.inputs.map(({ file }) => file)).toEqual([
    "study.json",
    "visits.csv",
    "horses.csv",
    "yards.csv",
    "changes.csv",
    "weather.csv",
    "outlines.csv",
  ]);
  const [json, input] = study.report.inputs;
  const text = '{"name":"Test","gaugeDay":"ends_on_date"}';
  expect(json).toMatchObject({
    kind: "study",
    bytes: text.length,
    sha256: createHash("sha256").update(text).digest("hex"),
    rowsRead: 0,
  });
  expect(input).toEqual({
    file: "visits.csv",
    kind: "visits",
    bytes: visits.length,
    sha256: createHash("sha256").update(visits).digest("hex"),
    rowsRead: 3,
    accepted: 3,
    setAside: 0,
    headers: ["visit_date", "horse_id", "foot", "thrush_grade"],
  });
});

test("only visits.csv and study.json are needed; each other file that is not there is named with what is lost", async () => {
  const study = await studyFrom({ "visits.csv": visits });
  expect(study.visits).toHaveLength(3);
  const absent = study.report.issues.filter(({ code }) => code === "file_absent");
  expect(absent.map(({ file }) => file)).toEqual(["horses.csv", "yards.csv", "changes.csv", "weather.csv", "outlines.csv"]);
  expect(absent.every(({ severity, hint }) => severity === "warning" && hint.startsWith("Without it "))).toBe(true);
});

test("a horses.csv without rows is not held against the visits", async () => {
  const study = await studyFrom({ "visits.csv": visits, "horses.csv": "horse_id\n" });
  expect(study.visits).toHaveLength(3);
  expect(faults(study)).toEqual(["horses.csv:- - no_rows warning"]);
});

test("the counts add up at every level, whatever was set aside", async () => {
  const rows = [
    "2025-03-01,Ash,LF,1", // kept
    "2025-03-01,Ash,LF,2", // the same foot again
    "2025-03-02,Ash,XX,2", // no foot of a horse: Ash's second visit has no row left
    "2025-03-02,Daisy,LF,2", // a cow
    "2025-03-02,Nobody,LF,2", // not in horses.csv
    "someday,Birch,LF,2", // no date: Birch is named, but no visit
  ];
  const study = await studyFrom({
    ...whole,
    "horses.csv": `${horses}Daisy,Y3,cow,2019\n`,
    "visits.csv": ["visit_date,horse_id,foot,thrush_grade", ...rows].join("\n"),
  });
  expect(study.report.flow).toEqual({
    footVisits: { read: 6, accepted: 1, setAside: 5 },
    visits: { read: 4, accepted: 1, setAside: 3 },
    horses: { read: 4, accepted: 1, setAside: 3 },
    yards: { read: 3, accepted: 1, setAside: 2 },
  });
});

test("a visit of an animal that is no equid is set aside with the reason", async () => {
  const study = await studyFrom({
    ...whole,
    "horses.csv": `${horses}Daisy,Y1,cow,2019\n`,
    "visits.csv": `${visits}2025-03-01,Daisy,LF,1\n`,
  });
  expect(faults(study)).toEqual(["visits.csv:5 horse_id not_equine set_aside", "horses.csv:4 species not_equine set_aside"]);
  expect(study.report.issues[0]?.message).toBe(
    'visits.csv, line 5, column horse_id: "Daisy" is set aside in horses.csv because its species is "cow".',
  );
});

test("without a time to go by, a visit of today is never refused and one a week ahead always is", async () => {
  const day = (ahead: number) => new Date(Date.now() + ahead * 86_400_000).toISOString().slice(0, 10);
  const text = `visit_date,horse_id,foot\n${day(0)},Ash,LF\n${day(7)},Ash,LF\n`;
  const study = await inFolder({ "study.json": '{"name":"T"}', "visits.csv": text }, (folder) => readStudy(folder));
  expect(study.visits.map(({ visitDate }) => visitDate)).toEqual([day(0)]);
  expect(faults(study)).toContain("visits.csv:3 visit_date visit_in_future set_aside");
});

test("an option today that is no day is refused", async () => {
  const reading = inFolder(whole, (folder) => readStudy(folder, { today: "30/6/2025" }));
  await expect(reading).rejects.toMatchObject({ code: "bad_today" });
});

test("issues stand in the order of files and lines, those of a whole file first", async () => {
  const study = await studyFrom({
    ...whole,
    "visits.csv": "visit_date,horse_id,foot,colour\nx,Ash,LF,\n2025-03-01,Ash,Q,\n",
    "yards.csv": "yard_id,gauge_id\nY1,G1\nY2,G9\n",
    "outlines.csv": "horse_id,visit_date,foot,ring,point,x_mm,y_mm\nAsh,2025-03-01,LF,wall,1,0,12.5\n",
    "horses.csv": "horse_id,species,yard_id\nAsh,hrose,Y1\n",
  });
  expect(faults(study)).toEqual([
    "visits.csv:- - unknown_column warning",
    "visits.csv:2 visit_date bad_date set_aside",
    "visits.csv:3 foot unknown_foot set_aside",
    "horses.csv:2 species not_equine set_aside",
    "yards.csv:3 gauge_id unknown_gauge warning",
    "outlines.csv:2 horse_id not_equine set_aside",
  ]);
});

test("the same folder gives the same study", async () => {
  expect(await studyFrom(whole)).toEqual(await studyFrom(whole));
});

test("a folder that is not there, is a file, or holds no study is refused", async () => {
  await inFolder({ "a.txt": "" }, async (folder) => {
    await expect(readStudy(join(folder, "nowhere"))).rejects.toMatchObject({ name: "StudyError", code: "folder_missing" });
    await expect(readStudy(join(folder, "a.txt"))).rejects.toMatchObject({ code: "not_a_folder" });
    await expect(readStudy(join(folder, "a.txt", "b"))).rejects.toMatchObject({ code: "folder_missing" });
    await expect(readStudy(folder)).rejects.toMatchObject({
      code: "file_missing",
      message: expect.stringContaining("study.json") as string,
    });
  });
});

test("a missing visits.csv is refused, with the name that was perhaps meant", async () => {
  expect(await refusalOf({ "Visit.csv": visits })).toMatchObject({
    code: "file_missing",
    hint: expect.stringContaining('"Visit.csv"') as string,
  });
});

test.skipIf(process.platform === "win32")("a folder or a pipe in the place of a file is refused and not waited for", async () => {
  await inFolder({ "study.json": '{"name":"T"}' }, async (folder) => {
    mkdirSync(join(folder, "visits.csv"));
    await expect(readStudy(folder)).rejects.toMatchObject({
      code: "not_a_file",
      message: expect.stringContaining("visits.csv") as string,
    });
  });
  await inFolder({ "study.json": '{"name":"T"}' }, async (folder) => {
    execFileSync("mkfifo", [join(folder, "visits.csv")]);
    await expect(readStudy(folder)).rejects.toMatchObject({ code: "not_a_file" });
  });
});

test.skipIf(process.platform === "win32")("a file the system will not open is refused with the system's reason", async () => {
  await inFolder({ "study.json": '{"name":"T"}' }, async (folder) => {
    symlinkSync("visits.csv", join(folder, "visits.csv"));
    await expect(readStudy(folder)).rejects.toMatchObject({
      code: "file_unreadable",
      message: expect.stringContaining("ELOOP") as string,
    });
  });
});

test.each([
  ["an empty file", "", "file_empty"],
  ["blank lines only", "\n\r\n \n", "file_empty"],
  ["a byte order mark only", "\uFEFF", "file_empty"],
  ["two bytes", "ab", "header_missing"],
  ["a header without a required column", "visit_date,foot\n", "header_missing"],
  ["a known column twice", "visit_date,horse_id,foot,Foot\n", "header_duplicate"],
  ["a stray quote in the header", 'visit_date,horse_id,"foot\n2025-03-01,Ash,LF\n', "header_unreadable"],
  ["NUL bytes in the header", "visit_date,horse_id,fo\0ot\n", "header_unreadable"],
  ["UTF-16 without its mark", Buffer.from(visits, "utf16le"), "not_csv_text"],
  ["UTF-16 big end first", Buffer.from(visits, "utf16le").swap16(), "not_csv_text"],
  ["a workbook", Buffer.from([0x50, 0x4b, 3, 4, 0, 0, 0, 0]), "not_csv_text"],
])("%s is refused with words", async (_, content, code) => {
  const refusal = await refusalOf({ "visits.csv": content });
  expect(refusal).toBeInstanceOf(StudyError);
  expect(refusal.code).toBe(code);
  expect(refusal.message).toMatch(/^visits\.csv[,:] .*\.$/);
  expect(refusal.hint).toMatch(/\.$|\?$/);
});

test("UTF-16 with its mark is read as it says", async () => {
  const study = await studyFrom({ "visits.csv": Buffer.from(`\uFEFF${visits}`, "utf16le") });
  expect(study.visits.map(({ horseId, thrushGrade }) => [horseId, thrushGrade])).toEqual([
    ["Ash", 1],
    ["Ash", 0],
    ["Birch", null],
  ]);
});

test("a header only is a study without rows", async () => {
  const study = await studyFrom({ "visits.csv": "visit_date,horse_id,foot" });
  expect(study.visits).toEqual([]);
  expect(faults(study)).toEqual(["visits.csv:- - no_rows warning"]);
});

test("weather files named in study.json are read, and must be there", async () => {
  const named = '{"name":"T","gaugeDay":"calendar_day","weather":[{"file":"rain.csv","format":"ghcn-by-station","gauge":"G7"}]}';
  const rain = "XX000000001,20250301,PRCP,25,,,E,\n";
  const study = await studyFrom({ "study.json": named, "visits.csv": visits, "rain.csv": rain });
  expect(study.weather).toMatchObject([{ gaugeId: "G7", date: "2025-03-01", rainMm: 2.5, file: "rain.csv", line: 1 }]);
  expect(study.report.inputs.map(({ file, kind }) => [file, kind])).toEqual([
    ["study.json", "study"],
    ["visits.csv", "visits"],
    ["rain.csv", "weather"],
  ]);
  expect(study.report.issues.some(({ file }) => file === "weather.csv")).toBe(false);
  expect(await refusalOf({ "study.json": named, "visits.csv": visits })).toMatchObject({ code: "file_missing" });
});

test("a gauge day given by two weather files is taken from the first", async () => {
  const study = await studyFrom({
    "study.json": '{"name":"T","gaugeDay":"calendar_day","weather":[{"file":"rain.csv","format":"ghcn-by-station"}]}',
    "visits.csv": visits,
    "weather.csv": "gauge_id,date,rain_mm\nXX1,2025-03-01,9\n",
    "rain.csv": "XX1,20250301,PRCP,25,,,E,\nXX1,20250302,PRCP,11,,,E,\n",
  });
  expect(study.weather.map(({ date, rainMm }) => [date, rainMm])).toEqual([
    ["2025-03-01", 9],
    ["2025-03-02", 1.1],
  ]);
  expect(study.report.issues.find(({ code }) => code === "duplicate_row")?.message).toContain(
    "already stands in weather.csv, line 2",
  );
});

test("the bound of today is inclusive", async () => {
  const study = await studyFrom({ "visits.csv": `visit_date,horse_id,foot\n${today},Ash,LF\n2025-07-01,Ash,LF\n` });
  expect(study.visits.map(({ line }) => line)).toEqual([2]);
});
