import { expect, test } from "vitest";
import { exposureShape } from "../../src/estimate/exposureShape.js";
import { seededRandom } from "../../src/estimate/numeric/seededRandom.js";
import { climateReference } from "./climateReference.js";
import { faultCode } from "./faultCode.js";
import { expectNear, referenceRows } from "./reference.js";

const rows = referenceRows("climate/lagged.csv").map((row) => ({
  ...row,
  total: Array.from({ length: 10 }, (_, day) => Number(row[`day${day}`])).reduce((sum, value) => sum + value, 0),
}));
const model = { rows, outcome: "case", exposure: "total", groups: ["yard"], method: "gee" } as const;
const options = { at: [10, 20, 40], reference: 20, knots: [15, 30], random: seededRandom(2) };

// R 4.2.2: geepack 1.3.9 geeglm on splines::ns; the curvature test by the second derivatives at the knots.
test("odds against 20 mm, errors and the test of curvature", () => {
  const found = exposureShape(model, options);
  const [low, here, high] = found.points;
  expectNear([Math.log(low!.estimate), Math.log(high!.estimate)], climateReference("shape", "log odds"), 1e-4);
  // t with 24 - 4 degrees of freedom: 2.085963 (R qt).
  const ses = [low!, high!].map(({ lower, upper }) => Math.log(upper / lower) / 2 / 2.08596344726584);
  expectNear(ses, climateReference("shape", "se"), 1e-4);
  expect([here!.estimate, here!.lower, here!.upper]).toEqual([1, 1, 1]);
  // Differences over 0.01 mm in R leave about 1e-4.
  expectNear([found.curvature.statistic], climateReference("shape", "curvature F"), 1e-3);
  expect(found.curvature.df).toEqual([2, 20]);
});

test("a bend that is there is found", () => {
  const random = seededRandom(3);
  const bent = rows.map((row) => ({ ...row, case: random.bernoulli(1 / (1 + Math.exp(2 - 0.003 * (row.total - 25) ** 2))) }));
  expect(exposureShape({ ...model, rows: bent }, options).curvature.p).toBeLessThan(1e-4);
});

test("too few exposures for a curve are refused", () => {
  expect(
    faultCode(() => exposureShape({ ...model, rows: rows.map((row) => ({ ...row, total: row.total > 20 ? 1 : 0 })) }, options)),
  ).toBe("too_few");
});
