import { expect, test } from "vitest";
import type { RepeatedMeasure } from "../../src/derive/repeatedMeasures.js";
import { shapeRepeatability } from "../../src/estimate/shapeRepeatability.js";

const pair = (horseId: string, first: number, second: number, measure: RepeatedMeasure["measure"]): RepeatedMeasure => ({
  ...{ horseId, visitDate: "2025-01-06", foot: "LF", measure, first, second },
  ...{ firstObserverId: "K", secondObserverId: "M" },
});

// Shrout PE, Fleiss JL (1979) Psychol Bull 86:420-428, their first two judges on six targets.
const judged: readonly (readonly [number, number])[] = [[9, 2], [6, 1], [8, 4], [7, 1], [10, 5], [6, 2]]; // prettier-ignore

test("six targets of Shrout and Fleiss: error within pairs by hand, correlation from the mean squares", () => {
  const [row] = shapeRepeatability(judged.map(([first, second], k) => pair(`h${k}`, first, second, "toeAngleDeg")));
  // Differences 7, 5, 4, 6, 5, 4: half their mean square is (49 + 25 + 16 + 36 + 25 + 16) / 12.
  expect(row!.sem.estimate).toBeCloseTo(Math.sqrt(167 / 12), 12);
  expect(row!.minimumDetectable).toBeCloseTo(1.959963984540054 * Math.sqrt(2) * Math.sqrt(167 / 12), 10);
  // Two-way mean squares by hand: sums 11 7 12 8 15 8, grand 61; between 1/2 x 667 - 61^2/12 = 23.4167 on 5;
  // judges (46^2 + 15^2)/6 - 61^2/12 = 80.0833 on 1; total 417 - 61^2/12 = 106.9167, so residual 3.4167 on 5.
  const [between, judges, residual] = [23.416666666667 / 5, 80.083333333333, 3.416666666667 / 5];
  const icc = (between - residual) / (between + residual + (2 * (judges - residual)) / 6);
  expect(row!.icc!.estimate).toBeCloseTo(icc, 9);
  expect(row!.agreement!.bias.estimate).toBeCloseTo(31 / 6, 12);
  expect([row!.feet, row!.horses, row!.note]).toEqual([6, 6, null]);
});

test("measures apart; one foot alone, or feet all alike, have an error and no correlation", () => {
  const rows = shapeRepeatability([
    pair("A", 50, 51, "toeAngleDeg"),
    pair("A", 120, 122, "hoofWidthMm"),
    pair("B", 118, 119, "hoofWidthMm"),
    pair("A", 1, 1, "frogIndex"),
    pair("B", 1, 1, "frogIndex"),
  ]);
  expect(rows.map(({ measure, feet, icc, agreement }) => [measure, feet, icc === null, agreement === null])).toEqual([
    ["toeAngleDeg", 1, true, true],
    ["hoofWidthMm", 2, false, true],
    ["frogIndex", 2, true, true],
  ]);
  expect(rows[0]!.sem.estimate).toBeCloseTo(Math.sqrt(0.5), 12);
  expect(rows[2]!.note).toMatch(/equal/);
  expect(shapeRepeatability([])).toEqual([]);
});
