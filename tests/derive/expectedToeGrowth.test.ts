import { expect, test } from "vitest";
import { expectedToeGrowth } from "../../src/derive/expectedToeGrowth.js";
import { defaultSettings } from "../../src/study/defaultSettings.js";
import { footVisit } from "../footVisit.js";
import { horseStay, studyOf } from "../study.js";

const horses = [horseStay({ horseId: "A", yardId: "Low", shod: "fronts", plannedIntervalDays: 42 })];
const settings = { ...defaultSettings, asOf: "2025-01-20" };
const expected = (visits: readonly ReturnType<typeof footVisit>[], rates?: Parameters<typeof expectedToeGrowth>[1]) =>
  expectedToeGrowth(studyOf({ visits, horses, settings }), rates);

// 42 days at the rates of growthRates: 8.48 to 13.02 mm; 13 mm in 6 weeks is the upper one of its source.
test("growth by the planned date, and the toe it makes", () => {
  const rows = expected([
    footVisit({ foot: "RH", stage: "before_trim", toeLengthMm: 90 }),
    footVisit({ foot: "LF", stage: "before_trim", toeLengthMm: 92, shoeState: "tight" }),
    footVisit({ foot: "LF", stage: "after_trim", toeLengthMm: 80 }),
  ]);
  expect(rows.map(({ foot, shoeing, dueOn, days, toeAfterTrimMm }) => [foot, shoeing, dueOn, days, toeAfterTrimMm])).toEqual([
    ["LF", "shod", "2025-02-17", 42, 80],
    ["RH", "bare", "2025-02-17", 42, null],
  ]);
  expect(rows[0]!.slowestMm).toBeCloseTo(8.484, 3);
  expect(rows[0]!.fastestMm).toBeCloseTo(13.02, 3);
  expect(rows[0]!.toeFromMm).toBeCloseTo(88.484, 3);
  expect(rows[0]!.toeToMm).toBeCloseTo(93.02, 3);
  expect([rows[1]!.toeFromMm, rows[1]!.toeToMm]).toEqual([null, null]);
});

test("the interval agreed at the visit comes before the horse's plan; rates can be given", () => {
  const rows = expected([footVisit({ nextIntervalDays: 28 })], { slowestMmPerDay: 0.25, fastestMmPerDay: 0.3 });
  expect(rows).toMatchObject([{ days: 28, slowestMm: 7, dueOn: "2025-02-03" }]);
  expect(rows[0]!.fastestMm).toBeCloseTo(8.4, 10);
});

test("only the open interval counts; without a plan, or of a specimen, there is none", () => {
  const two = expected([footVisit({ visitDate: "2024-12-02" }), footVisit()]);
  expect(two.map(({ from }) => from)).toEqual(["2025-01-06"]);
  expect(expected([footVisit({ horseId: "B" })])).toEqual([]);
  expect(expected([footVisit({ foot: "F" })])).toEqual([]);
});
