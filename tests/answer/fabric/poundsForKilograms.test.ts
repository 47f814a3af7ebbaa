import { expect, test } from "vitest";
import { poundsForKilograms } from "../../../src/answer/fabric/poundsForKilograms.js";
import { horseStay } from "../../study.js";

const horses = (weights: readonly number[], yardId = "Top") =>
  weights.map((weightKg, at) => horseStay({ horseId: `${yardId} ${String(at)}`, yardId, weightKg, heightCm: 160, line: at + 2 }));

test("a yard of 1,100 at 160 cm is weighed in pounds", () => {
  const [issue] = poundsForKilograms({ horses: [...horses([1100, 1150, 1080, 1200]), ...horses([500, 520, 480, 550], "Low")] });
  expect([issue?.code, issue?.column, issue?.line]).toEqual(["unit_run", "weight_kg", 2]);
  // 1100 / 1.6^3 = 268.55.
  expect(issue?.message).toContain("4 of 4 horses of Top have weights that look like pounds, such as 1100 at 160 cm (269 kg");
});

test("three horses are too few, and two heavy ones in four may be heavy horses", () => {
  expect(poundsForKilograms({ horses: horses([1100, 1150, 1080]) })).toEqual([]);
  expect(poundsForKilograms({ horses: horses([1100, 1150, 500, 520]) })).toEqual([]);
});

test("a yard of draught horses is heavy and not in pounds", () => {
  // 850 / 1.6^3 = 207.5, just inside the usual.
  expect(poundsForKilograms({ horses: horses([850, 840, 830, 860]) })).toEqual([]);
});
