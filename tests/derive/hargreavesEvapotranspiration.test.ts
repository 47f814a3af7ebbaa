import fc from "fast-check";
import { expect, test } from "vitest";
import { extraterrestrialRadiation } from "../../src/derive/extraterrestrialRadiation.js";
import { hargreavesEvapotranspiration } from "../../src/derive/hargreavesEvapotranspiration.js";

const lyon = { tMinC: 14.8, tMaxC: 26.6, latitudeDeg: 45.72, date: "2015-07-15" };

// FAO-56 example 20: Lyon in July, 5.0 mm a day; as quoted by the test suites of the Python packages pyet and PyETo. With the radiation of the formula for the
// middle of July (printed: 40.6) it is 5.033.
test("the example of FAO-56", () => {
  expect(hargreavesEvapotranspiration(lyon)).toBeCloseTo(5.0, 1);
  expect(hargreavesEvapotranspiration(lyon)).toBeCloseTo(5.033028, 5);
});

// McMahon TA et al. 2013 (supplement S19), Alice Springs on 20 July 1980, lowest 2, highest 21: 4.1129 mm by its form 0.0135 C Ra / 2.45 √range (mean + 17.8) with
// C = 0.00185 range² - 0.0433 range + 0.4023, as quoted by pyet. The two forms differ by the constant only.
test("Alice Springs on 20 July 1980, through the constant of the other form", () => {
  const range = 19;
  const other = (0.0135 * (0.00185 * range ** 2 - 0.0433 * range + 0.4023)) / 2.45;
  const found = hargreavesEvapotranspiration({ tMinC: 2, tMaxC: 21, latitudeDeg: -23.7951, date: "1980-07-20" })!;
  expect((found * other) / (0.0023 * 0.408)).toBeCloseTo(4.1129, 4);
});

// Python package pyet 1.5.0, hargreaves at 53.2 degrees north, times its latent heat and 0.408 (it divides by the heat of the day, FAO-56 by 2.45).
test.each([
  ["2015-01-10", 1.2, 8.1, 0.359867],
  ["2015-04-15", 4.3, 13.9, 2.372316],
  ["2015-07-15", 12, 22.4, 4.225488],
  ["2015-10-31", 9.5, 14, 0.647826],
])("53.2 degrees north on %s", (date, tMinC, tMaxC, expected) => {
  expect(hargreavesEvapotranspiration({ tMinC, tMaxC, latitudeDeg: 53.2, date })).toBeCloseTo(expected, 5);
});

// Ra of 32 MJ, 19 and 25 degrees: 2.927498 mm, from the equation by hand.
test("in proportion to the radiation above the atmosphere", () => {
  const at = { tMinC: 19, tMaxC: 25, latitudeDeg: -20, date: "2015-09-03" };
  expect((hargreavesEvapotranspiration(at)! / extraterrestrialRadiation(-20, 246)) * 32).toBeCloseTo(2.927498, 6);
});

test("more warmth and more range give more; no range, no sun and hard frost give none", () => {
  const degrees = fc.double({ min: -15, max: 40, noNaN: true });
  fc.assert(
    fc.property(degrees, fc.double({ min: 0.5, max: 20, noNaN: true }), fc.integer({ min: 1, max: 28 }), (low, range, day) => {
      const on = (tMinC: number, tMaxC: number) =>
        hargreavesEvapotranspiration({ tMinC, tMaxC, latitudeDeg: 53, date: `2025-05-${String(day).padStart(2, "0")}` })!;
      const found = on(low, low + range);
      expect(found).toBeGreaterThan(0);
      expect(on(low + 1, low + range + 1)).toBeGreaterThan(found);
      expect(on(low - 0.2, low + range + 0.2)).toBeGreaterThan(found);
    }),
  );
  expect(hargreavesEvapotranspiration({ ...lyon, tMinC: 20, tMaxC: 20 })).toBe(0);
  expect(hargreavesEvapotranspiration({ ...lyon, latitudeDeg: 80, date: "2015-12-20" })).toBe(0);
  expect(hargreavesEvapotranspiration({ ...lyon, tMinC: -40, tMaxC: -30 })).toBe(0);
});

test("missing stays missing; crossed temperatures, no number and no day are refused", () => {
  expect(hargreavesEvapotranspiration({ ...lyon, tMinC: null })).toBeNull();
  expect(hargreavesEvapotranspiration({ ...lyon, tMaxC: null })).toBeNull();
  expect(() => hargreavesEvapotranspiration({ ...lyon, tMaxC: 14.7 })).toThrow("below the lowest");
  expect(() => hargreavesEvapotranspiration({ ...lyon, tMaxC: Number.NaN })).toThrow("temperature");
  expect(() => hargreavesEvapotranspiration({ ...lyon, date: "2015-02-30" })).toThrow("2015-02-30");
  expect(() => hargreavesEvapotranspiration({ ...lyon, latitudeDeg: 99 })).toThrow("latitude");
});
