import { expect, test } from "vitest";
import { toTable } from "../../src/show/toTable.js";

test("columns are the fields of all rows; a field that a row lacks is missing; codes are joined", () => {
  const table = toTable(
    [
      { horse: "Fern", grade: 2 },
      { horse: "Moss", sites: ["cleft", "heel"] },
    ],
    "Two horses",
  );
  expect(table.caption).toBe("Two horses");
  expect(table.columns.map(({ name }) => name)).toEqual(["horse", "grade", "sites"]);
  expect(table.rows).toEqual([
    { horse: "Fern", grade: 2, sites: null },
    { horse: "Moss", grade: null, sites: "cleft;heel" },
  ]);
  expect(toTable([])).toEqual({ caption: "Rows", columns: [], rows: [] });
});

test("NaN and objects are refused with the name of the field", () => {
  expect(() => toTable([{ toeAngleDeg: NaN }])).toThrow("The field toeAngleDeg holds NaN");
  expect(() => toTable([{ gauge: { id: "G1" } }])).toThrow("The field gauge holds an object");
});
