import { expect, test } from "vitest";
import { ISSUES_KEPT } from "../../../src/read/report/issueLog.js";
import { faults, studyFrom } from "../folder.js";

const header = "visit_date,horse_id,foot,thrush_grade,crack_site,hoof_width_mm,note";
const visits = (...rows: readonly string[]) => studyFrom({ "visits.csv": [header, ...rows].join("\n") });

test("a fault in one optional cell costs that cell and not the row", async () => {
  const study = await visits("2025-03-01,Ash,LF,7,middle,900,wet");
  expect(study.visits).toMatchObject([{ thrushGrade: null, crackSite: null, hoofWidthMm: null, note: "wet" }]);
  expect(faults(study)).toEqual([
    "visits.csv:2 thrush_grade out_of_range cell_blanked",
    "visits.csv:2 hoof_width_mm out_of_range cell_blanked",
    "visits.csv:2 crack_site unknown_code cell_blanked",
  ]);
  expect(study.report.issues.find(({ code }) => code === "unknown_code")).toEqual({
    file: "visits.csv",
    line: 2,
    row: 1,
    column: "crack_site",
    value: "middle",
    code: "unknown_code",
    severity: "cell_blanked",
    message: 'visits.csv, line 2, column crack_site: "middle" is not a known word of this column; the cell counts as empty.',
    hint: 'Use toe, quarter, heel; several are separated by a semicolon. Or say under "words" in study.json what it means.',
  });
});

test("every required cell that is bad is named; faults of other cells of a row that is set aside are not", async () => {
  expect(faults(await visits("x,,LF,7,,,"))).toEqual([
    "visits.csv:2 visit_date bad_date set_aside",
    "visits.csv:2 horse_id required_empty set_aside",
  ]);
});

test("ragged rows are set aside; empty cells beyond the header and rows of nothing but commas are nothing", async () => {
  const study = await visits(
    "2025-03-01,Ash,LF,1,,,a, b",
    "2025-03-01,Ash,RF,1",
    "2025-03-01,Ash,LH,1,,,a,, ,",
    ",,,,,,",
    " , ",
    "2025-03-01,Ash,RH,1,,,",
  );
  expect(study.visits.map(({ foot }) => foot)).toEqual(["LH", "RH"]);
  expect(faults(study)).toEqual(["visits.csv:2 - ragged_row set_aside", "visits.csv:3 - ragged_row set_aside"]);
  expect(study.report.issues.filter(({ code }) => code === "ragged_row").map(({ row, message }) => [row, message])).toEqual([
    [1, "visits.csv, line 2: the row has 8 cells, the header 7."],
    [2, "visits.csv, line 3: the row has 4 cells, the header 7."],
  ]);
  expect(study.report.flow.footVisits).toEqual({ read: 4, accepted: 2, setAside: 2 });
});

test("a note over several lines keeps its line breaks, and the rows after it their line numbers", async () => {
  const study = await visits('2025-03-01,Ash,LF,1,,,"wet,\r\nthen dry\n"', "2025-03-01,Ash,RF,1,,,", "bad,Ash,LH,1,,,");
  expect(study.visits.map(({ line, note }) => [line, note])).toEqual([
    [2, "wet,\nthen dry"],
    [5, null],
  ]);
  expect(faults(study)).toEqual(["visits.csv:6 visit_date bad_date set_aside"]);
});

test("a stray quote costs its row alone; an inch mark costs nothing", async () => {
  const study = await visits('2025-03-01,Ash,LF,1,,,"wet', '2025-03-01,Ash,RF,1,,,6" crack', "2025-03-01,Ash,LH,1,,,dry");
  expect(study.visits.map(({ line, note }) => [line, note])).toEqual([
    [3, '6" crack'],
    [4, "dry"],
  ]);
  expect(faults(study)).toEqual(["visits.csv:2 - stray_quote set_aside", "visits.csv:3 - bare_quote warning"]);
});

test("lines that are no text are set aside and their neighbours kept", async () => {
  const rows = [
    "2025-03-01,Ash,LF,1,,,caf\xe9",
    "2025-03-01,Ash,RF,1,,,",
    "2025-03-01,Ash,LH,1,,,a\0b",
    `2025-03-01,Ash,RH,1,,,${"x".repeat(10_000_000)}`,
    "2025-03-02,Ash,LF,1,,,",
  ];
  const study = await studyFrom({ "visits.csv": Buffer.from([header, ...rows].join("\r\n"), "latin1") });
  expect(study.visits.map(({ line }) => line)).toEqual([3, 6]);
  expect(faults(study)).toEqual([
    "visits.csv:2 - not_utf8 set_aside",
    "visits.csv:4 - nul_byte set_aside",
    "visits.csv:5 - line_too_long set_aside",
  ]);
  expect(study.report.issues.every(({ value }) => (value ?? "").length <= 60)).toBe(true);
});

test("a column that smells of another unit is reported once for the file and not converted", async () => {
  const study = await visits(...["LF", "RF", "LH", "RH", "F"].map((foot) => `2025-03-01,Ash,${foot},1,,12.5,`));
  expect(study.visits.map(({ hoofWidthMm }) => hoofWidthMm)).toEqual([null, null, null, null, null]);
  expect(faults(study)[0]).toBe("visits.csv:- hoof_width_mm unit_smell warning");
  expect(study.report.counts.find(({ code }) => code === "out_of_range")?.count).toBe(5);
});

test("counts are exact while the list is bounded, and a flood of warnings hides no hard fault", async () => {
  const good = Array.from({ length: 500 }, (_, index) => `2025-03-01,H${String(index)},LF,9,,,`);
  const study = await visits(...good, "bad,Ash,LF,1,,,");
  expect(study.report.counts).toEqual(
    expect.arrayContaining([
      { file: "visits.csv", code: "out_of_range", column: "thrush_grade", severity: "cell_blanked", count: 500 },
      { file: "visits.csv", code: "bad_date", column: "visit_date", severity: "set_aside", count: 1 },
    ]),
  );
  expect(study.report.counts[0]?.count).toBe(500);
  expect(study.report.issues.filter(({ code }) => code === "out_of_range").map(({ line }) => line)).toEqual(
    Array.from({ length: ISSUES_KEPT }, (_, index) => index + 2),
  );
  expect(study.report.issues.find(({ code }) => code === "bad_date")?.line).toBe(502);
});

test("every record has every field of its table, missing ones null, in one order", async () => {
  const study = await visits("2025-03-01,Ash,LF,,,,", "2025-03-01,Ash,RF,1,toe,120,x");
  const [first, second] = study.visits;
  expect(Object.keys(first ?? {})).toEqual(Object.keys(second ?? {}));
  expect(Object.values(first ?? {}).filter((value) => value !== null)).toEqual(["2025-03-01", "Ash", "LF", "visits.csv", 2]);
  expect(Object.keys(first ?? {})).toHaveLength(37 + 2);
});
