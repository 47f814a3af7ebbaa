import { expect, test } from "vitest";
import { ageClass } from "../../src/derive/ageClass.js";

// Common practice, no source; aged from 15: Ireland JL et al. 2012, Equine Vet J 44:101.
test.each([
  [2025, "foal"],
  [2024, "yearling"],
  [2023, "young"],
  [2022, "young"],
  [2021, "adult"],
  [2011, "adult"],
  [2010, "aged"],
] as const)("born in %i, in 2025: %s", (birthYear, expected) => {
  expect(ageClass(birthYear, "2025-06-30")).toBe(expected);
});

test("it goes by the calendar year", () => {
  expect(ageClass(2024, "2025-12-31")).toBe("yearling");
  expect(ageClass(2024, "2026-01-01")).toBe("young");
});

test("not known without a year, or before birth", () => {
  expect(ageClass(null, "2025-06-30")).toBeNull();
  expect(ageClass(2026, "2025-06-30")).toBeNull();
  expect(() => ageClass(2020, "summer")).toThrow("no calendar day");
});
