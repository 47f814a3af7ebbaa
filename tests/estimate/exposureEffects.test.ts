import { expect, test } from "vitest";
import { exposureEffects } from "../../src/estimate/exposureEffects.js";
import { simulateSeasonStudy } from "../../src/simulate/simulateSeasonStudy.js";
import { expectNear, referenceRows } from "./reference.js";
import { seasonDesign } from "../simulate/seasonDesign.js";

// A worked example of season in the way, by hand: winter 30 of 50 wet and 15 of 40 dry feet are cases, summer 10 of 50 and 8 of 80.
// Odds ratios 2.50 and 2.25, Mantel-Haenszel 2.3938, crude 2.8116.
const cells = [
  ["winter", 1, 30, 20],
  ["winter", 0, 15, 25],
  ["summer", 1, 10, 40],
  ["summer", 0, 8, 72],
] as const;
const worked = cells.flatMap(([season, wet, cases, clear]) =>
  Array.from({ length: cases + clear }, (_, place) => ({
    season,
    wet,
    thrush: place < cases,
    yard: place % 12,
    horse: `${season} ${place % 24}`,
  })),
);

test("crude 2.8116, Mantel-Haenszel by season 2.3938", () => {
  const found = exposureEffects(
    { rows: worked, outcome: "thrush", exposure: "wet", groups: ["yard", "horse"] },
    { stratum: "season", above: 0.5 },
  );
  const estimateOf = (name: string) => found.find((effect) => effect.name === name)!.estimate;
  expectNear([estimateOf("Crude"), estimateOf("Crude, high against low")], [2.8116, 2.8116], 2e-5);
  expectNear([estimateOf("Mantel-Haenszel by season")], [2.3938], 2e-5);
  expect(found.map(({ name }) => name)).toEqual([
    "Crude",
    "Crude, high against low",
    "Mantel-Haenszel by season",
    "Estimating equations",
    "Mixed model",
  ]);
});

// UCBAdmissions of R datasets (Bickel, Hammel & O'Connell 1975 Science 187:398-403): crude 1.84108003718, Mantel-Haenszel 0.904696828259 (R 4.2.2).
test("a crude effect that turns round within strata", () => {
  const departments = [
    [512, 313, 89, 19],
    [353, 207, 17, 8],
    [120, 205, 202, 391],
    [138, 279, 131, 244],
    [53, 138, 94, 299],
    [22, 351, 24, 317],
  ] as const;
  const rows = departments.flatMap(([a, b, c, d], department) => [
    { department, man: 1, admitted: a, n: a + b, desk: 1 },
    { department, man: 0, admitted: c, n: c + d, desk: 2 },
  ]);
  const found = exposureEffects(
    { rows, outcome: { cases: "admitted", n: "n" }, exposure: "man", groups: ["department"] },
    { stratum: "department", above: 0.5 },
  );
  expectNear([found[1]!.estimate, found[2]!.estimate], [1.84108003718, 0.904696828259], 1e-10);
});

test("limits of the stratified lines leave out each yard in turn", () => {
  const [, , strata] = exposureEffects(
    { rows: worked, outcome: "thrush", exposure: "wet", groups: ["yard", "horse"] },
    { stratum: "season", above: 0.5 },
  );
  const without = Array.from({ length: 12 }, (_, yard) => {
    const rows = worked.filter((row) => row.yard !== yard);
    const found = exposureEffects(
      { rows, outcome: "thrush", exposure: "wet", groups: ["yard", "horse"] },
      { stratum: "season", above: 0.5 },
    );
    return Math.log(found[2]!.estimate!);
  });
  const mean = without.reduce((sum, value) => sum + value, 0) / 12;
  expectNear([strata!.seLog], [Math.sqrt((11 / 12) * without.reduce((sum, value) => sum + (value - mean) ** 2, 0))], 1e-8);
  expect([strata!.clusters, strata!.df]).toEqual([12, 11]);
});

test("between two exposures: the odds ratio per unit to the power of their distance, by the power for limits too", () => {
  const rows = referenceRows("regression/feet.csv");
  const found = exposureEffects(
    { rows, outcome: "thrush", exposure: "wet", per: 10, groups: ["yard", "horse"] },
    { between: [5, 35] },
  );
  const [gee, mixed, geeApart, mixedApart] = found.slice(-4);
  expectNear([geeApart!.estimate, mixedApart!.lower], [gee!.estimate! ** 3, mixed!.lower! ** 3], 1e-12);
  expectNear([mixedApart!.seLog], [3 * mixed!.seLog!], 1e-12);
  expect([geeApart!.contrast, geeApart!.p]).toEqual(["wet 35 against 5", gee!.p]);
});

test("season in the way: the crude effect is too high, the adjusted one is not", () => {
  const design = { ...seasonDesign, yards: 24, truth: { ...seasonDesign.truth, rainPer10Mm14d: 0, seasonAmplitude: 0.8 } };
  const { rows } = simulateSeasonStudy(design, 21);
  const model = { rows, outcome: "thrush", exposure: "rainMm14d", per: 10, groups: ["yardId", "horseId"] } as const;
  const found = exposureEffects({ ...model, adjust: [{ season: "visitDate" }, "hind"] });
  expect(found[0]!.lower!).toBeGreaterThan(1);
  for (const effect of found.slice(-2)) expect(effect.lower! < 1 && 1 < effect.upper!).toBe(true);
  expect(found.at(-1)!.adjustedFor).toEqual(["season of visitDate", "hind"]);
});
