import { expect, test } from "vitest";
import { requireGrowthRates } from "../../src/derive/requireGrowthRates.js";

test("two rates above 0, the slower first", () => {
  const rates = { slowestMmPerDay: 0.2, fastestMmPerDay: 0.2 };
  expect(requireGrowthRates(rates)).toBe(rates);
  for (const [slowestMmPerDay, fastestMmPerDay] of [
    [0, 0.3],
    [0.3, 0.2],
    [0.2, Infinity],
    [NaN, 0.3],
  ] as const) {
    expect(() => requireGrowthRates({ slowestMmPerDay, fastestMmPerDay })).toThrow("makes no sense");
  }
});
