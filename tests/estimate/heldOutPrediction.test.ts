import { expect, test } from "vitest";
import { heldOutPrediction } from "../../src/estimate/heldOutPrediction.js";
import { climateReference } from "./climateReference.js";
import { faultCode } from "./faultCode.js";
import { expectNear, referenceRows } from "./reference.js";

const rows = referenceRows("regression/feet.csv");
const model = { rows, outcome: "thrush", exposure: "wet", adjust: ["hind"], groups: ["yard", "horse"] } as const;

// R 4.2.2: glm made without each yard in turn.
test("Brier scores and calibration of yards held out", () => {
  const found = heldOutPrediction(model);
  expectNear([found.brier, found.brierWithout, found.brierPrevalence], climateReference("held out", "brier"), 1e-8);
  expectNear(
    [found.calibrationSlope.estimate, found.calibrationInTheLarge.estimate],
    climateReference("held out", "calibration"),
    1e-6,
  );
  expectNear([found.gain.estimate], [found.brierWithout - found.brier], 1e-9);
  expect(found.groups).toBe(14);
});

test("bins hold every foot once, in order of what was foretold", () => {
  const { bins, n, cases } = heldOutPrediction(model);
  const sum = (pick: (bin: (typeof bins)[number]) => number) => bins.reduce((total, bin) => total + pick(bin), 0);
  expect([sum((bin) => bin.n), sum((bin) => bin.cases)]).toEqual([n, cases]);
  expect(bins.every((bin, place) => place === 0 || bin.predicted >= bins[place - 1]!.predicted)).toBe(true);
});

test("an exposure that decides is a gain", () => {
  const told = rows.map((row, place) => ({ ...row, thrush: Number(row["wet"]) + (place % 7) > 26 ? 1 : 0 }));
  expect(heldOutPrediction({ ...model, rows: told }).gain.lower!).toBeGreaterThan(0);
});

test("two yards, or counts, are refused", () => {
  const two = rows.filter((row) => ["Y01", "Y02"].includes(String(row["yard"])));
  expect(faultCode(() => heldOutPrediction({ ...model, rows: two }))).toBe("too_few");
  expect(faultCode(() => heldOutPrediction({ ...model, outcome: { cases: "thrush", n: "hind" } }))).toBe("out_of_range");
});
