import { expect, test } from "vitest";
import type { ExposureEffect } from "../../src/estimate/ExposureEffect.js";
import { exposureEffects } from "../../src/estimate/exposureEffects.js";
import { plantedTruth } from "../../src/simulate/plantedTruth.js";
import { plantedDesign } from "../../src/simulate/season/plantedDesign.js";
import type { SeasonFoot } from "../../src/simulate/simulateSeasonStudy.js";
import { faultCode } from "../estimate/faultCode.js";
import { wilsonInterval } from "../../src/estimate/wilsonInterval.js";

function analyses(rows: readonly SeasonFoot[]): ExposureEffect[] {
  const model = { rows, outcome: "thrush", exposure: "rainMm14d", per: 10, groups: ["yardId", "horseId"] } as const;
  return exposureEffects({ ...model, adjust: [{ season: "visitDate" }, "hind"] });
}

// The short version of docs/planted-truth.md: 12 runs show a bias of several standard errors, not a coverage to the percent.
test("no effect planted: the crude analysis is wrong, the declared one is not", { timeout: 240_000 }, () => {
  const [crude, , mixed] = plantedTruth(plantedDesign(0), 1, analyses, { runs: 12, seed: "short" });
  expect(crude!.found.estimate).toBeGreaterThan(0.6);
  expect(crude!.coverage!.estimate).toBeLessThan(0.4);
  // By chance 4 or more of 12 tests of size 0.05 find something in 2 of 1000 trials.
  expect(mixed!.found.estimate).toBeLessThan(4 / 12);
  expect(mixed!.coverage!.estimate).toBeGreaterThan(8 / 12);
  expect(Math.abs(mixed!.meanLogOdds!)).toBeLessThan(3 * (mixed!.sdLogOdds! / Math.sqrt(12)));
});

test("shares, means and refusals by hand", () => {
  const effect = (lower: number | null, upper: number | null, p: number | null) =>
    [{ name: "A", estimate: 2, lower, upper, p }] as unknown as ExposureEffect[];
  const given = [effect(1, 3, 0.5), effect(2.5, 3, 0.01), effect(null, null, null)];
  let run = 0;
  const [found] = plantedTruth(plantedDesign(0), 2, () => given[run++]!, { runs: 3, seed: 1 });
  expect([found!.coverage, found!.found]).toEqual([wilsonInterval(1, 2), wilsonInterval(1, 3)]);
  expect([found!.meanLogOdds, found!.sdLogOdds, found!.refused]).toEqual([Math.log(2), 0, 1]);
});

test("runs that are no number, or an impossible limit, are refused", () => {
  expect(faultCode(() => plantedTruth(plantedDesign(0), 1, analyses, { runs: 1.5, seed: 1 }))).toBe("not_a_count");
  expect(faultCode(() => plantedTruth(plantedDesign(0), 1, analyses, { runs: 1, seed: 1, alpha: 2 }))).toBe("out_of_range");
});
