import { expect, test } from "vitest";
import { effectOfExposure } from "../../src/estimate/effectOfExposure.js";
import { fitMixedLogistic } from "../../src/estimate/fitMixedLogistic.js";
import { climateReference } from "./climateReference.js";
import { faultCode } from "./faultCode.js";
import { expectNear, referenceRows } from "./reference.js";

const herds = referenceRows("cbpp.csv");
const feet = referenceRows("regression/feet.csv");
const model = { rows: feet, outcome: "thrush", exposure: "wet", per: 10, adjust: ["hind"], groups: ["yard", "horse"] } as const;

// A real herd disease: contagious bovine pleuropneumonia in 15 herds (cbpp of R lme4), R 4.2.2 as in tests/reference/climate/references.R.
test("second against first period in the herds: odds ratio and error of the reference fit", () => {
  const periods = [2, 3, 4].map((period) => ({ period, name: `period${period}` }));
  const rows = herds.map((row) => ({
    ...row,
    ...Object.fromEntries(periods.map(({ period, name }) => [name, Number(row["period"] === period)])),
  }));
  const effect = effectOfExposure({
    rows,
    outcome: { cases: "incidence", n: "size" },
    exposure: "period2",
    adjust: ["period3", "period4"],
    groups: ["herd"],
  });
  expectNear([Math.log(effect.estimate!)], [climateReference("herds", "estimate")[1]!], 1e-4);
  expectNear([effect.seLog], [climateReference("herds", "robust se")[1]!], 1e-4);
  expect([effect.n, effect.cases, effect.clusters, effect.clusteredBy, effect.df]).toEqual([842, 99, 15, "herd", 11]);
  expect(effect.adjustedFor).toEqual(["period3", "period4"]);
});

test("per 10 mm is the tenth power of per 1 mm; the estimate is that of fitMixedLogistic", () => {
  const [ten, one] = [effectOfExposure(model), effectOfExposure({ ...model, per: 1 })];
  expectNear([ten.estimate, ten.lower, ten.upper], [one.estimate! ** 10, one.lower! ** 10, one.upper! ** 10], 1e-6);
  const plain = fitMixedLogistic({ rows: feet, outcome: "thrush", terms: ["wet", "hind"], groups: ["yard", "horse"] });
  expectNear([Math.log(one.estimate!)], [plain.coefficients[1]!.estimate], 1e-9);
  expect(ten.contrast).toBe("wet per 10");
});

test("rows with something missing are counted", () => {
  const rows = feet.map((row, place) => (place < 7 ? { ...row, wet: null } : row));
  const effect = effectOfExposure({ ...model, rows });
  expect([effect.n, effect.missing]).toEqual([feet.length - 7, 7]);
});

test.each([
  ["all cases", feet.map((row) => ({ ...row, thrush: 1 })), "no_variation"],
  ["no cases", feet.map((row) => ({ ...row, thrush: 0 })), "no_variation"],
  ["one horse", feet.filter((row) => row["yard"] === "Y01" && row["horse"] === "H1"), "too_few"],
  ["no exposure known", feet.map((row) => ({ ...row, wet: null })), "empty"],
  ["one exposure", feet.map((row) => ({ ...row, wet: 20 })), "collinear"],
] as const)("%s: no estimate, and the reason", (_, rows, reason) => {
  const effect = effectOfExposure({ ...model, rows });
  expect([effect.estimate, effect.lower, effect.n, effect.refused]).toEqual([null, null, null, reason]);
  expect(effect.note).toMatch(/\.$/);
});

test("a fault of the call is thrown", () => {
  expect(faultCode(() => effectOfExposure({ ...model, exposure: "wett" }))).toBe("unknown_column");
});
