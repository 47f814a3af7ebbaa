import { expect, test } from "vitest";
import { frontHindShape } from "../../src/derive/frontHindShape.js";
import type { FootVisit } from "../../src/study/FootVisit.js";
import { footVisit } from "../footVisit.js";

const sole = (foot: FootVisit["foot"], hoofWidthMm: number | null, hoofLengthMm: number | null, cells: Partial<FootVisit> = {}) =>
  footVisit({ foot, hoofWidthMm, hoofLengthMm, ...cells });

test("means of the two fore and the two hind feet, and their difference", () => {
  const rows = frontHindShape([sole("LF", 130, 125), sole("RF", 126, 126), sole("LH", 120, 125), sole("RH", 120, 120)]);
  expect(rows).toHaveLength(1);
  expect(rows[0]!.foreShapeIndex).toBeCloseTo(1.02, 12);
  expect(rows[0]!.hindShapeIndex).toBeCloseTo(0.98, 12);
  expect(rows[0]!.shapeIndexDifference).toBeCloseTo(0.04, 12);
  expect(rows[0]).toMatchObject({ foreWidthMm: 128, hindWidthMm: 120, widthDifferenceMm: 8 });
});

test("a foot that was not measured is left out of its mean, not counted as 0", () => {
  const rows = frontHindShape([sole("LF", 130, null), sole("RF", 126, 126), footVisit({ foot: "LH", thrushGrade: 1 })]);
  expect(rows).toMatchObject([
    {
      foreShapeIndex: 1,
      foreWidthMm: 128,
      hindShapeIndex: null,
      hindWidthMm: null,
      shapeIndexDifference: null,
      widthDifferenceMm: null,
    },
  ]);
});

test("one row for each horse, day and stage", () => {
  const rows = frontHindShape([
    sole("LF", 130, 130, { stage: "after_trim" }),
    sole("LF", 130, 130, { stage: "before_trim" }),
    sole("LF", 130, 130, { horseId: "B" }),
    sole("LF", 130, 130, { visitDate: "2024-12-01" }),
    sole("LF", 130, 130),
    sole("RF", 130, 130),
  ]);
  expect(rows.map((row) => [row.visitDate, row.horseId, row.stage])).toEqual([
    ["2024-12-01", "A", null],
    ["2025-01-06", "A", "after_trim"],
    ["2025-01-06", "A", "before_trim"],
    ["2025-01-06", "A", null],
    ["2025-01-06", "B", null],
  ]);
});
