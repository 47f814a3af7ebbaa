import { expect, test } from "vitest";
import { benjaminiHochberg } from "../../src/estimate/benjaminiHochberg.js";
import { effectOfExposure } from "../../src/estimate/effectOfExposure.js";
import { exposureWindows } from "../../src/estimate/exposureWindows.js";
import { expectNear, referenceRows } from "./reference.js";

const rows = referenceRows("climate/lagged.csv").map((row): Record<string, string | number> => {
  const upTo = (days: number) =>
    Array.from({ length: days }, (_, day) => Number(row[`day${day}`])).reduce((sum, value) => sum + value, 0);
  return { ...row, rainMm3d: upTo(3), rainMm7d: upTo(7), flat: 1 };
});
const model = { rows, outcome: "case", groups: ["yard"], method: "gee" } as const;
const exposures = [
  { exposure: "rainMm3d", per: 10 },
  { exposure: "rainMm7d", per: 10 },
  { exposure: "day9" },
  { exposure: "flat" },
];

test("every window is shown; p values are held against the number that could be tried", () => {
  const found = exposureWindows(model, exposures, "rainMm7d");
  expect(found.map(({ exposure, primary }) => [exposure, primary])).toEqual([
    ["rainMm3d", false],
    ["rainMm7d", true],
    ["day9", false],
    ["flat", false],
  ]);
  const own = effectOfExposure({ ...model, exposure: "rainMm7d", per: 10 });
  expect(found[1]!.estimate).toBe(own.estimate);
  // Holm by hand: three p values count, the fourth exposure has none.
  const p = found.slice(0, 3).map((effect) => effect.p!);
  const sorted = [...p].sort((a, b) => a - b);
  const smallest = found.find((effect) => effect.p === sorted[0])!;
  expectNear([smallest.holmP], [Math.min(1, 3 * sorted[0]!)], 1e-12);
  expect(found.map(({ falseDiscoveryP }) => falseDiscoveryP)).toEqual(benjaminiHochberg([...p, null]));
  expect([found[3]!.refused, found[3]!.holmP]).toEqual(["collinear", null]);
});
