import { expect, test } from "vitest";
import { toReportText } from "../../src/show/toReportText.js";
import type { DataReport } from "../../src/study/DataReport.js";
import { studyFrom } from "../read/folder.js";
import { outlineFile } from "../read/outlineFile.js";

const faulty = [
  "visit_date,horse_id,foot,thrush_grade,hoof_width_mm",
  "2025-03-01,Ash,LF,1,175",
  "2025-03-01,Ash,RF,7,120",
  "2025-03-01,Ash,LH,8,120",
  "x,Ash,LF,1,120",
].join("\n");

const report = async (visits = faulty): Promise<DataReport> => {
  const { report } = await studyFrom({
    "visits.csv": visits,
    "horses.csv": "horse_id\nAsh\n",
    "yards.csv": "yard_id\nY\n",
    "changes.csv": "yard_id,changed_on\nY,2025-01-01\n",
    "weather.csv": "gauge_id,date\nG,2025-01-01\n",
    "outlines.csv": outlineFile("Ash", "2025-03-01"),
  });
  return report;
};

test("files with their rows, then faults the dearest first, then the verdict", async () => {
  const text = toReportText(await report());
  const blocks = text.split("\n\n");
  expect(blocks[0]).toMatch(/^Rows of each file\n/);
  expect(blocks[0]).toMatch(/visits\.csv +4 +3 +1\n/);
  expect(blocks[0]).toMatch(/horses\.csv +1 +1 +0\n/);
  expect(blocks[1]).toMatch(/Feet at visits +4 +3 +1\n/);
  expect(blocks[1]).toMatch(/Visits +1 +1 +0\n/);
  expect(blocks.slice(2)).toEqual([
    '1 row set aside: bad date (visits.csv, visit_date)\n  visits.csv, line 5, column visit_date: "x" is not a calendar day.\n  To do: Write dates as year-month-day, such as 2024-03-05, or say their order\n  in study.json: none is guessed.',
    '2 cells left empty: out of range (visits.csv, thrush_grade)\n  visits.csv, line 3, column thrush_grade: "7" cannot be right: only 0 to 3 is\n  believed; the cell counts as empty.\n  Also in line 4.\n  To do: Check the value and its unit.',
    '1 warning, nothing lost: unusual value (visits.csv, hoof_width_mm)\n  visits.csv, line 2, column hoof_width_mm: "175" lies outside the usual 90 to\n  170 mm; it was kept.\n  To do: Check it against the paper record; leave it if it is right.',
    "1 row set aside of 71 rows; 2 cells left empty.",
  ]);
});

test("the worst is first, and where it stands is told: the first lines, then how many more", async () => {
  const rows = Array.from(
    { length: 20 },
    (_, index) => `2025-03-${String(index + 1).padStart(2, "0")},Ash,LF,${index % 2 === 0 ? 9 : 1},175`,
  );
  const blocks = toReportText(await report([faulty.split("\n")[0], ...rows, "x,Ash,LF,1,120"].join("\n"))).split("\n\n");
  expect(blocks.slice(2, 5).map((block) => block.split("\n")[0])).toEqual([
    "1 row set aside: bad date (visits.csv, visit_date)",
    "10 cells left empty: out of range (visits.csv, thrush_grade)",
    "20 warnings, nothing lost: unusual value (visits.csv, hoof_width_mm)",
  ]);
  expect(blocks[3]).toContain("  Also in lines 4, 6, 8, 10, 12, 14, 16, 18, and 1 more.");
  expect(blocks[4]).toContain("  Also in lines 3, 4, 5, 6, 7, 8, 9, 10, and 11 more.");
});

test("no line is wider than the terminal", async () => {
  const whole = await report();
  for (const width of [60, 80, 132]) {
    const lines = toReportText(whole, width).split("\n");
    expect(lines.filter((line) => line.length > width)).toEqual([]);
  }
  expect(toReportText(whole, 10)).toBe(toReportText(whole, 60));
});

test("when nothing was found there is nothing but counts and a verdict", async () => {
  const text = toReportText(await report("visit_date,horse_id,foot\n2025-03-01,Ash,LF\n"));
  expect(text.split("\n\n")).toHaveLength(3);
  expect(text.endsWith("\n\nAll 68 rows used.")).toBe(true);
});

test("a study without rows says so", async () => {
  const { report } = await studyFrom({ "visits.csv": "visit_date,horse_id,foot\n" });
  expect(toReportText(report).split("\n\n").at(-1)).toBe("There are no rows yet.");
});
