import { expect, test } from "vitest";
import { fromOtherDays } from "../../../src/estimate/fabric/fromOtherDays.js";
import { historyOf } from "../../../src/estimate/fabric/historyOf.js";

const spread = { mean: 10, between: 4, within: 2 };
// One subject on days 0, 1, 1, 2, and a second on one day.
const readings = { columns: 1, values: [12, 13, 15, 17, 9], starts: [0, 4, 5], days: [0, 1, 1, 2, 0] };

test("a reading is expected at the mean of the other days, drawn to the herd", () => {
  const { expected, variance } = fromOtherDays(readings, [spread], 2);
  // Days have means 12, 14 and 17; two other days weigh 4 / (4 + 2 / 2) = 0.8.
  expect(expected[0]).toBeCloseTo(10 + 0.8 * (15.5 - 10), 12);
  expect(expected[1]).toBeCloseTo(10 + 0.8 * (14.5 - 10), 12);
  expect(expected[2]).toBeCloseTo(10 + 0.8 * (14.5 - 10), 12);
  expect(expected[3]).toBeCloseTo(10 + 0.8 * (13 - 10), 12);
  // Variance of a reading and of the subject given two days: 2 + 4 - 4 * 4 / 5.
  expect(variance[0]).toBeCloseTo(2 + 4 - 16 / 5, 12);
});

test("a subject with too few days, a missing reading and an unknown spread", () => {
  expect(fromOtherDays(readings, [spread], 2).expected[4]).toBeNaN();
  expect(fromOtherDays(readings, [spread], 3).expected[0]).toBeNaN();
  expect(fromOtherDays(readings, [null], 2).expected[0]).toBeNaN();
  const gap = { ...readings, values: [NaN, 13, 15, 17, 9] };
  const { expected } = fromOtherDays(gap, [spread], 2);
  // Nothing was read on day 0, which still has two other days; the others have only one.
  expect(expected[0]).toBeCloseTo(10 + 0.8 * (15.5 - 10), 12);
  expect(expected[1]).toBeNaN();
});

test("the plain history of a row leaves its day out", () => {
  expect(historyOf(readings, 1, 0)).toEqual({ mean: 14.5, days: 2 });
  expect(historyOf(readings, 0, 0)).toEqual({ mean: 15, days: 2 });
});
