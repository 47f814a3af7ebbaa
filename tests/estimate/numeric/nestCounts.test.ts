import { expect, test } from "vitest";
import { nestCounts } from "../../../src/estimate/numeric/nestCounts.js";

test("rows with equal terms add up, horses that are alike stand once, yards are kept apart", () => {
  // Yard 1: horses 0 and 2 alike, horse 3 not. Yard 0: horse 1, the same as horse 0.
  const rows = [
    { outer: 1, inner: 0, x: 1, cases: 1, n: 1 },
    { outer: 1, inner: 0, x: 0, cases: 0, n: 1 },
    { outer: 0, inner: 1, x: 0, cases: 0, n: 1 },
    { outer: 1, inner: 2, x: 0, cases: 0, n: 1 },
    { outer: 1, inner: 0, x: 1, cases: 0, n: 3 },
    { outer: 1, inner: 3, x: 1, cases: 2, n: 4 },
    { outer: 1, inner: 2, x: 1, cases: 1, n: 4 },
    { outer: 0, inner: 1, x: 1, cases: 1, n: 4 },
    { outer: 1, inner: 3, x: 0, cases: 0, n: 1 },
  ];
  const counts = nestCounts({
    columns: [Float64Array.from(rows, () => 1), Float64Array.from(rows, ({ x }) => x)],
    cases: Float64Array.from(rows, ({ cases }) => cases),
    n: Float64Array.from(rows, ({ n }) => n),
    outer: Int32Array.from(rows, ({ outer }) => outer),
    inner: Int32Array.from(rows, ({ inner }) => inner),
  });
  expect(counts).toMatchObject({ terms: 2, cells: 6, inner: 3, outer: 2 });
  expect([...counts.outerStart]).toEqual([0, 1, 3]);
  expect([...counts.innerStart]).toEqual([0, 2, 4, 6]);
  expect([...counts.copies]).toEqual([1, 2, 1]);
  expect([...counts.placeOf]).toEqual([1, 0, 1, 2]);
  expect([...counts.x]).toEqual([1, 0, 1, 1, 1, 0, 1, 1, 1, 0, 1, 1]);
  expect([...counts.cases]).toEqual([0, 1, 0, 1, 0, 2]);
  expect([...counts.n]).toEqual([1, 4, 1, 4, 1, 4]);
  // Choices: 0 of 3, 2 of 4, 1 of 4 twice.
  expect(counts.constant).toBeCloseTo(Math.log(1 * 6 * 4 * 4), 12);
});
