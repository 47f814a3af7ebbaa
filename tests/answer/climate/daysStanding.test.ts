import { expect, test } from "vitest";
import { daysStanding } from "../../../src/answer/climate/daysStanding.js";
import type { LagProfile } from "../../../src/estimate/lagProfile.js";

/** Days whose odds ratio and lower limit of the whole curve are given, from the day of the visit backwards. */
function profile(days: readonly (readonly [estimate: number, lowerTogether: number])[], p = 0.01) {
  return {
    days: days.map(([estimate, lowerTogether], lagDays) => ({ lagDays, estimate, lowerTogether })),
    anyDay: { p },
    level: 0.95,
  } as unknown as LagProfile;
}

test("runs of days above 1 with the whole curve, each with its highest day", () => {
  const found = daysStanding(
    profile([
      [1.1, 0.9],
      [1.2, 1.05],
      [1.3, 1.1],
      [1.2, 1.01],
      [1.1, 1],
      [1.4, 1.02],
    ]),
  );
  expect(found.map(({ from, to, most }) => [from, to, most.lagDays])).toEqual([
    [1, 3, 2],
    [5, 5, 5],
  ]);
});

test("none above 1, or a test that does not reject: no day stands out", () => {
  expect(daysStanding(profile([[1.2, 0.99]]))).toEqual([]);
  expect(daysStanding(profile([[1.2, 1.1]], 0.051))).toEqual([]);
  expect(daysStanding(profile([[1.2, 1.1]], 0.049))).toHaveLength(1);
});
