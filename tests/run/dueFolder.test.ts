import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import ICAL from "ical.js";
import { expect, test } from "vitest";
import { dueFolder } from "../../src/run/dueFolder.js";
import { folderWith, heard, studyJson } from "./folders.js";

const visits = "visit_date,horse_id,foot,next_interval_days\n2025-01-06,Bess,LF,42\n2025-01-20,=HYPERLINK(1),LF,42\n";

test("writes page, CSV and calendar, as of the day given", async () => {
  const folder = folderWith({ "study.json": studyJson, "visits.csv": visits });
  const terminal = heard();
  expect(await dueFolder(folder, { out: join(folder, "out"), asOf: "2025-03-01" }, terminal)).toBe(0);
  const read = (name: string) => readFileSync(join(folder, "out", name), "utf8");
  // 6 January + 42 days is 17 February: 12 days over. The name that a spreadsheet would run has an apostrophe before it.
  expect(read("due-list.csv").split("\r\n").slice(0, 3)).toEqual([
    "Horse,Yard,State,Due on,Days to the date,Last routine visit,Last seen,Days agreed",
    "Bess,,over,2025-02-17,-12,2025-01-06,2025-01-06,42",
    "'=HYPERLINK(1),,due,2025-03-03,2,2025-01-20,2025-01-20,42",
  ]);
  expect(read("due-list.html")).toContain("1 horse is over the date by more than 7 days: Bess (12 days)");
  const calendar = new ICAL.Component(ICAL.parse(read("due-list.ics")) as unknown[]);
  const events = calendar.getAllSubcomponents("vevent").map((each) => new ICAL.Event(each));
  expect(events.map(({ summary, startDate }) => [summary, startDate.toString()])).toEqual([
    ["Over: Bess", "2025-03-01"],
    ["Due: =HYPERLINK(1)", "2025-03-03"],
  ]);
  expect(terminal.text()).toContain("due-list.ics");
});

test("without any date there is no calendar, and it says so", async () => {
  const folder = folderWith({ "study.json": studyJson, "visits.csv": "visit_date,horse_id,foot\n2025-01-06,Bess,LF\n" });
  const terminal = heard();
  expect(await dueFolder(folder, { out: join(folder, "out") }, terminal)).toBe(0);
  expect(existsSync(join(folder, "out", "due-list.ics"))).toBe(false);
  expect(terminal.text()).toContain("No calendar: no horse on the list has a date.");
});

test("a day that is none, or nobody there: an error that says what to do, and nothing written", async () => {
  const folder = folderWith({ "study.json": studyJson, "visits.csv": visits });
  await expect(dueFolder(folder, { out: join(folder, "out"), asOf: "1 March" }, heard())).rejects.toMatchObject({
    code: "bad_setting",
  });
  const empty = folderWith({ "study.json": studyJson, "visits.csv": "visit_date,horse_id,foot\n" });
  await expect(dueFolder(empty, { out: join(empty, "out") }, heard())).rejects.toMatchObject({ code: "nobody_due" });
  expect(existsSync(join(folder, "out"))).toBe(false);
});

test("of one yard: its horses only, and nothing names another", async () => {
  const horses = "horse_id,yard_id,planned_interval_days\nBess,North,42\nDuke,Xanadu,42\n";
  const seen = "visit_date,horse_id,foot\n2025-01-06,Bess,LF\n2025-01-07,Duke,LF\n";
  const named = studyJson.replace(/"name":\s*"[^"]*"/, '"name": "Xanadu and North"');
  expect(named).toContain("Xanadu");
  const folder = folderWith({ "study.json": named, "visits.csv": seen, "horses.csv": horses });
  await dueFolder(folder, { out: join(folder, "out"), asOf: "2025-02-20", yard: "North" }, heard());
  const read = (end: string) => readFileSync(join(folder, "out", `due-list-North.${end}`), "utf8");
  for (const end of ["html", "csv", "ics"]) {
    expect(read(end)).toContain("Bess");
    expect(read(end)).not.toMatch(/Xanadu|Duke/);
  }
  await expect(dueFolder(folder, { out: folder, yard: "Nort" }, heard())).rejects.toMatchObject({
    code: "unknown_yard",
    hint: "Did you mean North?",
  });
});
