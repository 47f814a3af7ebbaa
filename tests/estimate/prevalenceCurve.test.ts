import { expect, test } from "vitest";
import { fitMixedLogistic } from "../../src/estimate/fitMixedLogistic.js";
import { marginalPrevalence } from "../../src/estimate/marginalPrevalence.js";
import { prevalenceCurve } from "../../src/estimate/prevalenceCurve.js";
import { climateReference } from "./climateReference.js";
import { faultCode } from "./faultCode.js";
import { expectNear, referenceRows } from "./reference.js";

const rows = referenceRows("regression/feet.csv");
const model = { rows, outcome: "thrush", exposure: "wet", per: 10, adjust: ["hind"], groups: ["yard", "horse"] } as const;

// R 4.2.2: geepack 1.3.9 geeglm, factor G/(G-p), delta method by numDeriv.
test("estimating equations: points, band and difference", () => {
  const curve = prevalenceCurve({ ...model, method: "gee" }, { at: [10, 30], between: [10, 30] });
  const wanted = [...climateReference("curve", "at 10"), ...climateReference("curve", "at 30")];
  expectNear(
    curve.points.flatMap(({ estimate, lower, upper }) => [estimate, lower, upper]),
    wanted,
    1e-5,
  );
  const { estimate, lower, upper } = curve.difference!;
  expectNear([estimate, lower, upper], climateReference("curve", "difference"), 1e-5);
});

test("mixed, nothing else held equal: that of marginalPrevalence", () => {
  const [point] = prevalenceCurve({ ...model, adjust: [] }, { at: [25] }).points;
  const fit = fitMixedLogistic({ rows, outcome: "thrush", terms: [{ column: "wet", per: 10 }], groups: ["yard", "horse"] });
  expectNear([point!.estimate], [marginalPrevalence(fit, { "wet per 10": 2.5 }).estimate], 1e-9);
});

test("the shares of the two feet are weighted by how many there are", () => {
  const at = (hind: number) =>
    prevalenceCurve(
      { ...model, rows: rows.map((row) => ({ ...row, wet: 20 + (Number(row["wet"]) % 3), hind })), adjust: [] },
      { at: [20] },
    );
  // Without the other foot the curve is one foot's: between the two it must lie.
  expect(at(0).points[0]!.estimate).toBe(at(1).points[0]!.estimate);
});

test("what cannot be fitted is thrown", () => {
  expect(faultCode(() => prevalenceCurve({ ...model, rows: rows.map((row) => ({ ...row, thrush: 0 })) }, { at: [1] }))).toBe(
    "no_variation",
  );
  expect(faultCode(() => prevalenceCurve(model, { at: [NaN] }))).toBe("not_a_number");
});
