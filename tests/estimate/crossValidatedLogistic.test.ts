import { expect, test } from "vitest";
import { crossValidatedLogistic } from "../../src/estimate/crossValidatedLogistic.js";
import { wilsonInterval } from "../../src/estimate/wilsonInterval.js";
import { faultCode } from "./faultCode.js";
import { expectNear, referenceRows } from "./reference.js";
import { shapeReference } from "./shapeReference.js";

const rows = referenceRows("iris.csv")
  .filter((row) => row["Species"] !== "setosa")
  .map((row, i) => ({ ...row, virginica: row["Species"] === "virginica", fold: `f${i % 10}` }));
const terms = ["Sepal.Length", "Sepal.Width", "Petal.Length"];
const apart = (one: readonly number[], other: readonly number[]) => {
  expect(one.length).toBe(other.length);
  return Math.max(...one.map((value, k) => Math.abs(value - other[k]!)));
};

test("virginica among two species of iris, held out row by row, by glm (R)", () => {
  const found = crossValidatedLogistic({ rows, outcome: "virginica", terms });
  expectNear(found.fit.coefficients.map(({ estimate }) => estimate), shapeReference("logit coefficients"), 1e-7); // prettier-ignore
  expect(apart(found.rows.map(({ probability }) => probability), shapeReference("logit probabilities"))).toBeLessThan(1e-8); // prettier-ignore
  const held = shapeReference("logit held out");
  expect(apart(found.rows.map(({ heldOut }) => heldOut), held)).toBeLessThan(1e-8); // prettier-ignore
  const wrong = held.filter((p, i) => p >= 0.5 !== i >= 50).length;
  expect(found.crossValidated.errors).toBe(wrong);
  const { lower, upper } = wilsonInterval(wrong, 100);
  expect(found.crossValidated.errorRate).toMatchObject({ estimate: wrong / 100, lower, upper });
  expectNear([found.brier], [held.reduce((sum, p, i) => sum + (p - (i < 50 ? 0 : 1)) ** 2, 0) / 100], 1e-7);
  expect([found.folds, found.n]).toEqual([100, 100]);
});

test("held out in ten folds, by glm (R)", () => {
  const found = crossValidatedLogistic({ rows, outcome: "virginica", terms, foldBy: "fold", cutoff: 0.3 });
  const held = shapeReference("logit folds held out");
  expect(apart(found.rows.map(({ heldOut }) => heldOut), held)).toBeLessThan(1e-8); // prettier-ignore
  expect(found.crossValidated.errors).toBe(held.filter((p, i) => p >= 0.3 !== i >= 50).length);
  expect(found.crossValidated.errorRate.method).toMatch(/cluster/i);
  expect(found.folds).toBe(10);
});

test("nulls are counted, what cannot be fitted is refused, with the fold", () => {
  const found = crossValidatedLogistic({
    rows: [...rows, { ...rows[0]!, virginica: null }],
    outcome: "virginica",
    terms,
    foldBy: "fold",
  });
  expect([found.n, found.dropped[0]!.count]).toEqual([100, 1]);
  const halves = rows.map((row, i) => ({ ...row, fold: i < 50 ? "a" : "b" }));
  expect(faultCode(() => crossValidatedLogistic({ rows: halves, outcome: "virginica", terms, foldBy: "fold" }))).toBe(
    "no_variation",
  );
  expect(() => crossValidatedLogistic({ rows: halves, outcome: "virginica", terms, foldBy: "fold" })).toThrow('Without "a": ');
  const one = rows.map((row) => ({ ...row, fold: 1 }));
  expect(faultCode(() => crossValidatedLogistic({ rows: one, outcome: "virginica", terms, foldBy: "fold" }))).toBe("too_few");
  const told = rows.map((row, i) => ({ ...row, told: i }));
  expect(faultCode(() => crossValidatedLogistic({ rows: told, outcome: "virginica", terms: ["told"] }))).toBe("separation");
  expect(faultCode(() => crossValidatedLogistic({ rows, outcome: "virginica", terms, cutoff: 2 }))).toBe("out_of_range");
});
