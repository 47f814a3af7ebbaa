import { expect, test } from "vitest";
import { unitSmell } from "../../../src/read/table/unitSmell.js";
import { horseColumns } from "../../../src/study/horseColumns.js";
import { visitColumns } from "../../../src/study/visitColumns.js";

function smell(name: string, values: readonly number[]): string | null {
  const column = [...visitColumns, ...horseColumns].find((each) => each.name === name);
  if (column === undefined) throw new Error(name);
  return unitSmell(column, new Map(values.map((value) => [String(value), { count: 1 }])))?.found ?? null;
}

// Common practice, no source: a width of 9-18 is centimetres, of 3-9 inches; an angle of 0.7-1.1 is radians.
test("centimetres, inches and radians", () => {
  expect(smell("hoof_width_mm", [12.1, 12.4, 13, 11.8, 12.9])).toBe(
    '5 of 5 values look like centimetres, such as "12.1"; nothing was converted',
  );
  expect(smell("hoof_width_mm", [4.8, 5, 5.1, 4.9, 5.2])).toContain("look like inches");
  expect(smell("toe_angle_deg", [0.87, 0.91, 0.85, 0.9, 0.95])).toContain("look like radians");
  expect(smell("height_cm", [15.2, 16, 14.1, 16.2, 15])).toContain("look like hands");
  expect(smell("height_cm", [1.52, 1.6, 1.48, 1.62, 1.5])).toContain("look like metres");
});

test("most values must smell, and five at least must be there", () => {
  expect(smell("hoof_width_mm", [12, 12.5, 13, 120, 121, 122])).toBeNull();
  expect(smell("hoof_width_mm", [12, 12.5, 13, 13.5, 120, 121, 122])).not.toBeNull();
  expect(smell("hoof_width_mm", [12, 12.5, 13, 13.5])).toBeNull();
});

test("right values, odd values and values without another unit smell of nothing", () => {
  expect(smell("hoof_width_mm", [120, 125, 130, 118, 122])).toBeNull();
  expect(smell("hoof_width_mm", [900, 950, 980, 1000, 870])).toBeNull();
  expect(smell("cleft_depth_mm", [1, 1.2, 0.8, 1.1, 1.4])).toBeNull();
  expect(smell("thrush_grade", [0, 1, 2, 3, 0.5])).toBeNull();
});

test("cells count, not distinct texts", () => {
  const column = visitColumns.find(({ name }) => name === "hoof_width_mm");
  if (column === undefined) throw new Error();
  const texts = new Map([
    ["12.5", { count: 90 }],
    ["120", { count: 10 }],
    ["", { count: 500 }],
    ["wide", { count: 500 }],
  ]);
  expect(unitSmell(column, texts)?.found).toContain("90 of 100 values");
});
