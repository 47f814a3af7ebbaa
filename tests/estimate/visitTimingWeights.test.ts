import { expect, test } from "vitest";
import { visitTimingWeights } from "../../src/estimate/visitTimingWeights.js";
import { climateReference } from "./climateReference.js";
import { faultCode } from "./faultCode.js";
import { expectNear, referenceRows } from "./reference.js";

const rows = referenceRows("climate/stretches.csv");
const given = { rows, visited: "visited", numerator: ["sinceDays"], denominator: ["sinceDays", "grade"] } as const;

// R 4.2.2: fitted values of two glm fits.
test("weights as quotients of fitted chances, cut off and divided by their mean", () => {
  const found = visitTimingWeights({ ...given, truncateAt: [0.05, 0.95] });
  const weights = found.weights.filter((weight) => weight !== null);
  expectNear(weights, climateReference("visit weights", "weights"), 1e-8);
  expectNear([found.effectiveVisits], climateReference("visit weights", "effective"), 1e-8);
  expect([found.visits, weights.length, found.missing]).toEqual([weights.length, weights.length, 0]);
  // 5 % of each tail.
  expect(found.truncated).toBe(2 * Math.floor(0.05 * (weights.length - 1) + 1));
});

test("equal terms above and below weigh every visit 1", () => {
  const { weights } = visitTimingWeights({ ...given, denominator: ["sinceDays"] });
  expect(weights.every((weight) => weight === null || Math.abs(weight - 1) < 1e-12)).toBe(true);
});

test("a visit with a term missing has no weight and is counted", () => {
  const holes = rows.map((row, place) => (place < 40 ? { ...row, grade: null } : row));
  const found = visitTimingWeights({ ...given, rows: holes });
  expect(found.missing).toBe(rows.slice(0, 40).filter((row) => row["visited"] === 1).length);
  expect(found.weights.slice(0, 40)).toEqual(Array(40).fill(null));
});

test("quantiles out of order are refused", () => {
  expect(faultCode(() => visitTimingWeights({ ...given, truncateAt: [0.9, 0.1] }))).toBe("out_of_range");
});
