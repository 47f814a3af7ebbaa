import { expect, test } from "vitest";
import { fittedModel } from "../../../src/estimate/climate/fittedModel.js";
import { fitGee } from "../../../src/estimate/fitGee.js";
import { climateReference } from "../climateReference.js";
import { faultCode } from "../faultCode.js";
import { expectNear, referenceRows } from "../reference.js";

const herds = referenceRows("cbpp.csv");
const period = { column: "period", reference: 1 };
const outcome = { cases: "incidence", n: "size" };
const given = { rows: herds, outcome, terms: [period], groups: ["herd"] } as const;

// cbpp of R lme4: R 4.2.2, each herd's integral by a sum over a fine grid, slopes and curvature by numDeriv 2016.8-1.1.
test("15 herds: estimates, and errors from the spread of the herds' scores", () => {
  const model = fittedModel(given);
  const wanted = (quantity: string) => climateReference("herds", quantity);
  // Numerical slopes and BFGS leave about 1e-5.
  expectNear(
    model.fit.coefficients.map(({ estimate }) => estimate),
    wanted("estimate"),
    1e-4,
  );
  expectNear(
    model.fit.coefficients.map(({ se }) => se),
    wanted("robust se"),
    1e-4,
  );
  expectNear(model.sds, wanted("sd"), 1e-4);
  expectNear([model.logLik], wanted("logLik"), 1e-8);
  expectNear(model.parameters.flat(), wanted("robust covariance"), 1e-3);
  expect(model.fit.coefficients[1]!.df).toBe(11);
  expect([model.clusters, model.cases, model.fit.n]).toEqual([15, 99, 842]);
});

test("few outer groups become terms, and the inner ones the clusters", () => {
  const feet = referenceRows("regression/feet.csv");
  const model = fittedModel({
    rows: feet,
    outcome: "thrush",
    terms: ["hind"],
    groups: ["yard", "horse"],
    minimumGroups: 20,
    method: "gee",
  });
  expect(model.clusteredBy).toBe("horse");
  // Counted from feet.csv: 14 yards, of which Y09 has clear feet only; the other 13 hold 56 horses.
  expect(model.clusters).toBe(56);
  expect(model.fit.coefficients.filter(({ name }) => name.startsWith("yard: "))).toHaveLength(12);
  expect(model.fit.notes[1]).toMatch(/^1 of them/);
  expect(model.fit.notes[0]).toMatch(/^14 groups of yard/);
});

test("estimating equations are those of fitGee, with the factor G/(G-p); weights make pairs independent", () => {
  const feet = referenceRows("regression/feet.csv");
  const choices = { rows: feet, outcome: "thrush", terms: ["hind", "wet"], groups: ["yard", "horse"], method: "gee" } as const;
  const wanted = fitGee({ rows: feet, outcome: "thrush", terms: ["hind", "wet"], cluster: "yard", correction: "clusters" });
  expect(fittedModel(choices).fit.coefficients).toEqual(wanted.coefficients);
  expect(fittedModel({ ...choices, weights: "weight" }).fit.method).toMatch(/independence/);
  expect(faultCode(() => fittedModel({ ...choices, method: "mixed", weights: "weight" }))).toBe("out_of_range");
});

test("a correlation that clusters cannot have gives way to none, and says so", () => {
  // Three feet a horse, one of them a case in each horse: the correlation within is -1/2, the least there can be.
  const rows = Array.from({ length: 90 }, (_, place) => ({
    horse: Math.floor(place / 3),
    wet: (place * 7) % 11,
    thrush: place % 3 === Math.floor(place / 3) % 3,
  }));
  const model = fittedModel({ rows, outcome: "thrush", terms: ["wet"], groups: ["horse"], method: "gee" });
  expect(model.fit.notes[0]).toMatch(/could not be had/);
  const plain = fitGee({
    rows,
    outcome: "thrush",
    terms: ["wet"],
    cluster: "horse",
    correlation: "independence",
    correction: "clusters",
  });
  expect(model.fit.coefficients).toEqual(plain.coefficients);
});
