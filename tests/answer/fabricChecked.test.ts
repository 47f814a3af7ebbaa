import { expect, test } from "vitest";
import { fabricChecked } from "../../src/answer/fabricChecked.js";
import { footVisit } from "../footVisit.js";
import { studyOf } from "../study.js";

const study = studyOf({
  visits: [
    footVisit({ horseId: "Rowan" }),
    footVisit({ horseId: "Rowan", foot: "RF", line: 3 }),
    footVisit({ horseId: "rowan", foot: "LH", line: 4 }),
  ],
});

test("doubts stand in the report, counted and listed, and nothing else changes", () => {
  const checked = fabricChecked(study);
  expect(checked.report.counts).toEqual([
    { file: "visits.csv", code: "spelled_two_ways", column: "horse_id", severity: "warning", count: 1 },
  ]);
  expect(checked.report.issues.map(({ line, message }) => [line, message])).toEqual([
    [
      4,
      "visits.csv, line 4, column horse_id: one horse seems to be spelled in 2 ways and counts as 2: " +
        '"Rowan" in 2 rows, "rowan" in 1 rows.',
    ],
  ]);
  expect({ ...checked, report: study.report }).toEqual(study);
});

test("a second call changes nothing, and doubts that no longer hold go away", () => {
  const once = fabricChecked(study);
  expect(fabricChecked(once)).toEqual(once);
  const mended = { ...once, visits: once.visits.slice(0, 2) };
  expect(fabricChecked(mended).report).toEqual(study.report);
});
