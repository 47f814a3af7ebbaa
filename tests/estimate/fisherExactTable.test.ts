import fc from "fast-check";
import { expect, test } from "vitest";
import { fisherExact } from "../../src/estimate/fisherExact.js";
import { fisherExactTable } from "../../src/estimate/fisherExactTable.js";
import { closedForm } from "./closedForm.js";
import { faultCode } from "./faultCode.js";
import { expectNear } from "./reference.js";

// R 4.2.2, fisher.test; the first is the job satisfaction example of ?fisher.test (Agresti 2002, p. 57).
// prettier-ignore
test.each([
  ["jobs", [[1, 3, 10, 6], [2, 3, 10, 7], [1, 6, 14, 12], [0, 1, 9, 11]]],
  ["2x3", [[3, 0, 2], [1, 5, 3]]],
  ["3x3", [[8, 3, 1], [2, 6, 4], [0, 3, 7]]],
  ["5x2", [[9, 1], [4, 3], [6, 5], [2, 8], [1, 6]]],
])("%s", (name, matrix) => {
  expectNear([fisherExactTable(matrix).p], closedForm(`fisher table ${name}`), 1e-9);
});

test("two by two it is the hypergeometric test, whatever is turned round", () => {
  const cell = fc.integer({ min: 0, max: 25 });
  fc.assert(
    fc.property(cell, cell, cell, cell, (a, b, c, d) => {
      fc.pre(a + b > 0 && c + d > 0 && a + c > 0 && b + d > 0);
      const { p } = fisherExact(a, b, c, d);
      // prettier-ignore
      for (const table of [[[a, b], [c, d]], [[d, c], [b, a]], [[a, c], [b, d]]]) expectNear([fisherExactTable(table).p], [p], 1e-9);
    }),
  );
});

test("rows and columns may be turned, and empty ones do not count", () => {
  const p = fisherExactTable([
    [8, 3, 1],
    [2, 6, 4],
    [0, 3, 7],
  ]).p!;
  const turned = fisherExactTable([
    [0, 7, 4, 1],
    [0, 3, 6, 3],
    [0, 0, 0, 0],
    [0, 0, 2, 8],
  ]);
  expectNear([turned.p], [p], 1e-10);
  expect([turned.rows, turned.columns]).toEqual([3, 3]);
});

test("one filled row leaves nothing to test", () => {
  expect(fisherExactTable([[3, 2], [0, 0]]).p).toBeNull(); // prettier-ignore
});

test("a table with too many like it is refused instead of running on", () => {
  const large = [
    [10, 30, 100, 60],
    [20, 30, 100, 70],
    [10, 60, 140, 120],
    [5, 10, 90, 110],
  ];
  expect(faultCode(() => fisherExactTable(large))).toBe("out_of_range");
});

test("rows of unlike length and empty tables are refused", () => {
  expect(faultCode(() => fisherExactTable([[1, 2], [3]]))).toBe("length_mismatch");
  expect(faultCode(() => fisherExactTable([[0, 0], [0, 0]]))).toBe("empty"); // prettier-ignore
});
