import { expect, test } from "vitest";
import { sizedFeet } from "../../src/derive/sizedFeet.js";
import { footVisit } from "../footVisit.js";
import { horseStay } from "../study.js";

const visits = [
  footVisit({ visitDate: "2025-01-06", stage: "after_trim", hoofWidthMm: 120, hoofLengthMm: 120, toeAngleDeg: 50 }),
  footVisit({ visitDate: "2025-03-03", stage: "after_trim", hoofWidthMm: 130, hoofLengthMm: 130, toeAngleDeg: 52 }),
  footVisit({ visitDate: "2025-03-03", stage: "before_trim", hoofWidthMm: 150, hoofLengthMm: 150 }),
  footVisit({ visitDate: "2025-05-05", stage: "after_trim", hoofWidthMm: 140, hoofLengthMm: null }),
];

test("one row a foot and stage: geometric mean size of days with both lengths, means of measures", () => {
  const [after, before] = sizedFeet({ visits, horses: [] }, ["shapeIndex", "toeAngleDeg"]);
  expect(after).toMatchObject({ horseId: "A", footId: "A LF", foot: "LF", end: "fore", stage: "after_trim" });
  expect(after!.sizeMm).toBeCloseTo(Math.sqrt(120 * 130), 9);
  expect(after!.values).toEqual({ shapeIndex: 1, toeAngleDeg: 51 });
  expect(before).toMatchObject({ stage: "before_trim", values: { shapeIndex: 1 } });
  expect(before!.sizeMm).toBeCloseTo(150, 9);
  expect(sizedFeet({ visits: [...visits].reverse(), horses: [] }, ["shapeIndex", "toeAngleDeg"])).toEqual([after, before]);
});

test("without both lengths there is no size; specimens have no row; every measure unless some are named", () => {
  const rows = sizedFeet({
    visits: [footVisit({ hoofWidthMm: 120 }), footVisit({ horseId: "S", foot: "F", hoofWidthMm: 120, hoofLengthMm: 120 })],
    horses: [],
  });
  expect(rows).toMatchObject([{ horseId: "A", sizeMm: null, values: { hoofWidthMm: 120 } }]);
  expect(rows).toHaveLength(1);
  expect(sizedFeet({ visits: [], horses: [] })).toEqual([]);
});

test("only days in the last age class make a foot", () => {
  const horses = [horseStay({ horseId: "A", birthYear: 2024 })];
  const young = footVisit({ visitDate: "2026-02-02", stage: "after_trim", hoofWidthMm: 145, hoofLengthMm: 145 });
  const [after] = sizedFeet({ visits: [...visits, young], horses }, []);
  expect(after).toMatchObject({ ageClass: "young", values: {} });
  expect(after!.sizeMm).toBeCloseTo(145, 9);
});
