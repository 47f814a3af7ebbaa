import { expect, test } from "vitest";
import { faults, type Files, studyFrom } from "../folder.js";

const horses =
  "horse_id,yard_id,birth_year,birth_year_estimated,shod,joined_on,left_on\nAsh,Y1,2012,no,bare,2020-01-01,2024-12-31\nAsh,Y2,2012,no,bare,2025-02-01,\nBirch,Y1,2020,yes,all,,\n";
const header = "visit_date,horse_id,foot,stage,thrush_grade,thrush_site,examined,shoe_state";

async function read(rows: readonly string[], files: Files = { "horses.csv": horses }) {
  const study = await studyFrom({ ...files, "visits.csv": [header, ...rows].join("\n") });
  return {
    study,
    kept: study.visits.map(({ line }) => line),
    said: faults(study).map((fault) => fault.replace("visits.csv:", "")),
  };
}

test("a visit after today is set aside", async () => {
  const { kept, said } = await read(["2025-06-30,Ash,LF,,,,,", "2025-07-01,Ash,LF,,,,,"]);
  expect(kept).toEqual([2]);
  expect(said).toEqual(["3 visit_date visit_in_future set_aside"]);
});

test("a horse that horses.csv does not hold is set aside, with the name that was perhaps meant", async () => {
  const { kept, study } = await read(["2025-06-01,Brich,LF,,,,,", "2025-06-01,Oak,LF,,,,,"]);
  expect(kept).toEqual([]);
  expect(
    study.report.issues.filter(({ code }) => code === "unknown_horse").map(({ line, value, hint }) => [line, value, hint]),
  ).toEqual([
    [2, "Brich", 'Add it to horses.csv or correct the spelling. Was "Birch" meant?'],
    [3, "Oak", "Add it to horses.csv or correct the spelling."],
  ]);
});

test("without horses.csv any name is a horse", async () => {
  expect((await read(["2025-06-01,Oak,LF,,,,,"], {})).kept).toEqual([2]);
});

test("before the birth year a visit is set aside, or kept with a warning when the year is a guess", async () => {
  const { kept, said } = await read(["2011-12-31,Ash,LF,,,,,", "2019-12-31,Birch,LF,,,,,", "2020-01-01,Birch,LF,,,,,"]);
  expect(kept).toEqual([3, 4]);
  expect(said).toEqual(["2 visit_date before_birth set_aside", "3 visit_date before_birth warning"]);
});

test("between two stays a visit is kept with a warning; the first and last day of a stay are inside", async () => {
  const { kept, said } = await read(["2024-12-31,Ash,LF,,,,,", "2025-01-15,Ash,LF,,,,,", "2025-02-01,Ash,LF,,,,,"]);
  expect(kept).toEqual([2, 3, 4]);
  expect(said).toEqual(["3 visit_date outside_stay warning"]);
});

test("one horse, day, foot and stage comes once; an unknown stage is a stage of its own", async () => {
  const { kept, said, study } = await read([
    "2025-06-01,Ash,LF,before_trim,1,,,",
    "2025-06-01,Ash,LF,after_trim,1,,,",
    "2025-06-01,Ash,LF,,1,,,",
    "2025-06-01,Birch,LF,before_trim,1,,,",
    "2025-06-01,Ash,near fore,Before trim,2,,,",
    "2025-06-02,Ash,LF,before_trim,2,,,",
  ]);
  expect(kept).toEqual([2, 3, 4, 5, 7]);
  expect(said).toEqual(["6 - duplicate_row set_aside"]);
  expect(study.report.issues.find(({ code }) => code === "duplicate_row")?.message).toBe(
    "visits.csv, line 6: a row of this horse, day, foot and stage already stands in line 2.",
  );
});

test("a row that was itself set aside is no first one", async () => {
  expect((await read(["2025-06-01,Ash,LF,,,,,,too long", "2025-06-01,Ash,LF,,,,,"])).kept).toEqual([3]);
});

test("cells that contradict each other are kept with a warning", async () => {
  const { kept, said } = await read([
    "2025-06-01,Ash,LF,,0,central_sulcus,,",
    "2025-06-01,Ash,RF,,1,,no,",
    "2025-06-01,Ash,LH,,0,,,lost",
    "2025-06-01,Birch,LF,,0,,,lost",
  ]);
  expect(kept).toEqual([2, 3, 4, 5]);
  expect(said).toEqual([
    "2 thrush_site site_without_thrush warning",
    "3 examined graded_but_not_examined warning",
    "4 shoe_state lost_shoe_on_bare_horse warning",
  ]);
});

test("rows of many horses in any order are told apart", async () => {
  const rows = ["LF", "RF", "LH", "RH"].flatMap((foot) => ["Ash", "Birch"].map((horse) => `2025-06-01,${horse},${foot},,1,,,`));
  const { kept, study } = await read([...rows, ...rows]);
  expect(kept).toHaveLength(8);
  expect(study.report.flow.visits).toEqual({ read: 2, accepted: 2, setAside: 0 });
  expect(study.report.flow.footVisits).toEqual({ read: 16, accepted: 8, setAside: 8 });
});

test("a stranger is reported as a stranger however many there are", async () => {
  const { study } = await read(Array.from({ length: 300 }, (_, index) => `2025-06-01,Horse ${String(index)},LF,,1,,,`));
  expect(study.report.counts.find(({ code }) => code === "unknown_horse")?.count).toBe(300);
});
