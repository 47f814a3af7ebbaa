import { expect, test } from "vitest";
import { growthRates } from "../../src/derive/growthRates.js";

// The arithmetic behind each rate, from the figures of its abstract: 30.69 mm in 5 months of 30.4 days, 7 mm in 28 days, 13 mm in 6 weeks.
test("rates are what their studies report", () => {
  const rate = (author: string) => growthRates.published.find(({ source }) => source.startsWith(author))?.mmPerDay;
  expect(rate("Reilly")).toBeCloseTo(30.69 / (5 * 30.4375), 3);
  expect(rate("Josseck")).toBeCloseTo(7 / 28, 10);
  expect(rate("Kolstrung")).toBeCloseTo(13 / 42, 2);
});

test("the usual range spans the published ones", () => {
  const rates = growthRates.published.map(({ mmPerDay }) => mmPerDay);
  expect(growthRates.usual).toEqual({ slowestMmPerDay: Math.min(...rates), fastestMmPerDay: Math.max(...rates) });
});
