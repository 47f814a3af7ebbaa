import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { growthRates } from "../../src/derive/growthRates.js";
import { type MarkGrowth, markGrowth } from "../../src/derive/markGrowth.js";
import { fitMixedLinear } from "../../src/estimate/fitMixedLinear.js";
import { herdGrowth } from "../../src/estimate/herdGrowth.js";
import { seededRandom } from "../../src/estimate/numeric/seededRandom.js";
import type { DistrictTruth } from "../../src/simulate/district/districtTruth.js";
import { demoStudy } from "../simulate/demoStudy.js";

const span = (horseId: string, foot: MarkGrowth["foot"], grownMm: number, cells: Partial<MarkGrowth> = {}): MarkGrowth => ({
  ...{ horseId, foot, markKind: "ring", footId: `${horseId} ${foot}`, yardId: "Y", end: "fore", shoeing: "bare" },
  ...{ ageClass: "adult", season: "winter", from: "2025-01-01", to: "2025-02-10", days: 40, fromMm: 10, toMm: 10 + grownMm },
  ...{ grownMm, grownMmPerDay: grownMm / 40 },
  ...cells,
});

test("the demo: mean, spread of horses and each horse as planted", async () => {
  const truth = JSON.parse(readFileSync("data-demo/truth.json", "utf8")) as DistrictTruth;
  const planted = new Map(truth.horses.map(({ horseId, growthMmPerDay }) => [horseId, growthMmPerDay]));
  const growth = herdGrowth(markGrowth(await demoStudy()));
  const followed = growth.ofHorses.map(({ name }) => planted.get(name)!);
  const mean = followed.reduce((sum, value) => sum + value, 0) / followed.length;
  expect(growth.horses).toBeGreaterThan(25);
  // Some 340 spans of a reading error of 1.2 mm over 40 days or so.
  expect(Math.abs(growth.mean!.estimate - mean)).toBeLessThan(0.003);
  // Planted with SD 0.025, cut at 0.20 and 0.31.
  expect(growth.horseSd!).toBeGreaterThan(0.017);
  expect(growth.horseSd!).toBeLessThan(0.034);
  const held = growth.ofHorses.filter(({ name, lower, upper }) => planted.get(name)! >= lower! && planted.get(name)! <= upper!);
  expect(held.length / growth.ofHorses.length).toBeGreaterThan(0.85);
  // No season was planted.
  for (const { lower, upper } of growth.seasons) expect(lower! < mean && upper! > mean).toBe(true);
  expect(growth.ratesFrom).toBe("this herd");
  expect(growth.rates.slowestMmPerDay).toBeGreaterThan(0.17);
  expect(growth.rates.fastestMmPerDay).toBeLessThan(0.33);
});

test("a planted season and age come back, and are those of the model with these terms", () => {
  const random = seededRandom("growth by season");
  const rows = Array.from({ length: 12 }, (_, h) =>
    (["winter", "spring", "summer", "autumn"] as const).flatMap((season, k) =>
      [0, 1].map(() =>
        span(
          `h${h}`,
          k % 2 === 0 ? "LF" : "RF",
          40 * (0.24 + (season === "spring" ? 0.04 : 0) + h * 0.002) + random.normal(0, 0.3),
          {
            season,
            ageClass: h < 4 ? "yearling" : "adult",
          },
        ),
      ),
    ),
  ).flat();
  const growth = herdGrowth(rows);
  const of = (name: string) => growth.seasons.find((season) => season.name === name)!.estimate;
  expect(of("spring") - of("winter")).toBeCloseTo(0.04, 2);
  expect(growth.ages.map(({ name, horses }) => [name, horses])).toEqual([["adult", 8], ["yearling", 4]]); // prettier-ignore
  const fit = fitMixedLinear({
    ...{ rows, outcome: "grownMmPerDay", groups: ["horseId", "footId"] },
    terms: [{ column: "ageClass", reference: "yearling" }],
  });
  const [yearling, adult] = [fit.coefficients[0]!, fit.coefficients[1]!];
  const young = growth.ages.find(({ name }) => name === "yearling")!;
  expect(young.estimate).toBeCloseTo(yearling.estimate, 9);
  // Limits of the other group directly from a model with it as reference.
  expect(young.lower!).toBeCloseTo(yearling.lower, 6);
  expect(growth.ages[0]!.estimate).toBeCloseTo(yearling.estimate + adult.estimate, 9);
});

test("short spans are left out, and without horses enough the published range stands in", () => {
  const rows = [
    span("A", "LF", 10),
    span("A", "LF", 11),
    span("B", "LF", 9),
    span("B", "LF", 9, { days: 7, grownMmPerDay: 9 / 7 }),
  ];
  expect(herdGrowth(rows)).toMatchObject({
    ...{ n: 3, horses: 2, short: 1, mean: null, ofHorses: [] },
    ...{ rates: growthRates.usual, ratesFrom: "published studies" },
    note: "Marks were followed in 2 horses; 5 are needed.",
  });
  const alike = ["A", "B", "C", "D", "E"].map((horseId) => span(horseId, "LF", 10));
  expect(herdGrowth(alike)).toMatchObject({ mean: null, ratesFrom: "published studies" });
});
