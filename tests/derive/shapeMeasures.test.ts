import { expect, test } from "vitest";
import { shapeMeasures } from "../../src/derive/shapeMeasures.js";
import { footVisit } from "../footVisit.js";
import { horseStay, studyOf } from "../study.js";

const horses = [
  horseStay({ horseId: "A", yardId: "Low", leftOn: "2025-05-31", shod: "fronts", birthYear: 2024, type: "cob" }),
  horseStay({ horseId: "A", yardId: "High", joinedOn: "2025-06-01", shod: "fronts", birthYear: 2024, type: "cob" }),
];
const angle = (visitDate: string, cells: Parameters<typeof footVisit>[0] = {}) =>
  footVisit({ visitDate, toeAngleDeg: 50, stage: "before_trim", ...cells });

test("one row a measure, by day, with the stay, age class and shoeing of the day", () => {
  const visits = [angle("2025-06-02"), angle("2025-05-05", { foot: "RH" }), angle("2026-01-05")];
  const rows = shapeMeasures(studyOf({ visits, horses }));
  expect(rows.map(({ footId, yardId, ageClass, shoeing, measure }) => [footId, yardId, ageClass, shoeing, measure])).toEqual([
    ["A RH", "Low", "yearling", "bare", "toeAngleDeg"],
    ["A LF", "High", "yearling", "shod", "toeAngleDeg"],
    ["A LF", "High", "young", "shod", "toeAngleDeg"],
  ]);
});

test("days count from the first row of the same foot, stage and measure", () => {
  const visits = [
    angle("2025-01-06"),
    angle("2025-02-10", { stage: "after_trim" }),
    angle("2025-02-17"),
    angle("2025-03-03", { toeAngleDeg: null, hoofWidthMm: 120 }),
  ];
  const rows = shapeMeasures(studyOf({ visits }), ["toeAngleDeg", "hoofWidthMm"]);
  expect(rows.map(({ stage, measure, daysSinceFirst }) => [stage, measure, daysSinceFirst])).toEqual([
    ["before_trim", "toeAngleDeg", 0],
    ["after_trim", "toeAngleDeg", 0],
    ["before_trim", "toeAngleDeg", 42],
    ["before_trim", "hoofWidthMm", 0],
  ]);
});

test("what was not measured has no row; specimens have no side", () => {
  const rows = shapeMeasures(
    studyOf({ visits: [angle("2025-01-06", { toeAngleDeg: null }), angle("2025-01-06", { foot: "F" })] }),
  );
  expect(rows).toMatchObject([{ foot: "F", end: "fore", side: null, yardId: null, ageClass: null, shoeing: null }]);
});
