import { describe, expect, test } from "vitest";
import { fitGee } from "../../src/estimate/fitGee.js";
import { fitLinear } from "../../src/estimate/fitLinear.js";
import { waldTest } from "../../src/estimate/waldTest.js";
import { expectNear, referenceFit, referenceRows } from "./reference.js";

const rows = referenceRows("regression/feet.csv");
const ground = { column: "ground", reference: "clay" } as const;

test("both grounds after estimating equations, by b'V^-1 b in R from geepack 1.3.9", () => {
  const fit = fitGee({ rows, outcome: "thrush", terms: [{ column: "wet", per: 10 }, "hind", ground], cluster: "yard" });
  const wanted = referenceFit("gee yard")("wald ground");
  for (const names of [["ground"], ["ground: sand", "ground: peat"]]) {
    const { statistic, df, method } = waldTest(fit, names);
    expectNear([statistic], wanted, 1e-8);
    expect(df).toEqual([2]);
    expect(method).toMatch(/^Wald chi-square test of ground: /);
  }
});

test("all terms of a linear regression: the overall F test of R lm", () => {
  const fit = fitLinear({ rows, outcome: "toeAngleDeg", terms: ["hind", "age", ground] });
  const { statistic, df, p } = waldTest(fit, ["hind", "age", "ground"]);
  expectNear([statistic, ...df], referenceFit("linear")("f"), 1e-9);
  expect(p).toBeCloseTo(fit.f!.p, 12);
});

test("one coefficient: the square of its own test", () => {
  const fit = fitLinear({ rows, outcome: "toeAngleDeg", terms: ["hind", "age"], cluster: "yard" });
  const { statistic, p } = waldTest(fit, ["age"]);
  expectNear([statistic, p], [fit.coefficients[2]!.statistic! ** 2, fit.coefficients[2]!.p!], 1e-9);
});

describe("what cannot be tested is refused in words", () => {
  test("a name the fit does not have", () => {
    const fit = fitLinear({ rows, outcome: "toeAngleDeg", terms: ["hind"] });
    expect(() => waldTest(fit, ["fore"])).toThrow(/no coefficient "fore"/);
  });
  test("more coefficients than clusters can carry", () => {
    const some = rows.filter((row) => ["Y01", "Y02", "Y03"].includes(String(row["yard"])));
    const fit = fitLinear({ rows: some, outcome: "toeAngleDeg", terms: ["hind", "age", "wet"], cluster: "yard" });
    expect(() => waldTest(fit, ["hind", "age", "wet"])).toThrow(expect.objectContaining({ code: "too_few" }) as Error);
  });
});
