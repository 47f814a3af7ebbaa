import { expect, test } from "vitest";
import { repeatedMeasures } from "../../src/derive/repeatedMeasures.js";
import { minimumDetectableChange } from "../../src/estimate/minimumDetectableChange.js";
import { standardErrorOfMeasurement } from "../../src/estimate/standardErrorOfMeasurement.js";
import { footVisit } from "../footVisit.js";

const read = (observerId: string | null, cells: Parameters<typeof footVisit>[0] = {}) =>
  footVisit({ observerId, stage: "before_trim", toeAngleDeg: 50, ...cells });

test("two observers of one foot and day make a pair for each measure that both took", () => {
  const pairs = repeatedMeasures([
    read("M", { stage: "single", toeAngleDeg: 52, hoofWidthMm: 121, hoofLengthMm: 118 }),
    read("K", { hoofWidthMm: 120, hoofLengthMm: 120 }),
  ]);
  expect(pairs.map(({ measure, first, second }) => [measure, first, second])).toEqual([
    ["hoofWidthMm", 120, 121],
    ["hoofLengthMm", 120, 118],
    ["toeAngleDeg", 50, 52],
    ["shapeIndex", 1, 121 / 118],
  ]);
  expect(pairs[0]).toMatchObject({
    horseId: "A",
    foot: "LF",
    visitDate: "2025-01-06",
    firstObserverId: "K",
    secondObserverId: "M",
  });
});

test("after the trim, without a name, by the same observer, on another day or foot: no pair", () => {
  for (const other of [
    read("M", { stage: "after_trim" }),
    read(null, { stage: "single" }),
    read("K", { stage: "single" }),
    read("M", { stage: "single", visitDate: "2025-01-07" }),
    read("M", { stage: "single", foot: "RF" }),
    read("M", { stage: "single", toeAngleDeg: null }),
  ]) {
    expect(repeatedMeasures([read("K"), other])).toEqual([]);
  }
});

test("three observers make three pairs", () => {
  const pairs = repeatedMeasures([read("C", { stage: null }), read("A"), read("B", { stage: "single" })], ["toeAngleDeg"]);
  expect(pairs.map(({ firstObserverId, secondObserverId }) => firstObserverId + secondObserverId)).toEqual(["AB", "AC", "BC"]);
});

// By hand: differences 1, -1, 2, 0; SEM = sqrt(6 / 4 / 2) = 0.8660; 1.96 sqrt(2) SEM = 2.4005.
test("the rows are what the smallest detectable change is made of", () => {
  const visits = [
    ["LF", 50, 51],
    ["RF", 50, 49],
    ["LH", 50, 52],
    ["RH", 50, 50],
  ].flatMap(([foot, one, two]) => [
    read("K", { foot: foot as "LF", toeAngleDeg: one as number }),
    read("M", { foot: foot as "LF", toeAngleDeg: two as number, stage: "single" }),
  ]);
  const pairs = repeatedMeasures(visits, ["toeAngleDeg"]);
  const sem = standardErrorOfMeasurement(pairs.map(({ first, second }) => [first, second]));
  expect(sem.estimate).toBeCloseTo(0.866, 4);
  expect(minimumDetectableChange(sem.estimate)).toBeCloseTo(2.4005, 3);
});
