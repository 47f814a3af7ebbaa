import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { linearDiscriminant, type DiscriminantOptions, type LinearDiscriminant } from "../../src/estimate/linearDiscriminant.js";
import { seededRandom } from "../../src/estimate/numeric/seededRandom.js";
import { faultCode } from "./faultCode.js";
import { expectNear, referenceRows } from "./reference.js";
import { shapeReference } from "./shapeReference.js";

const iris = referenceRows("iris.csv");
const four = ["Sepal.Length", "Sepal.Width", "Petal.Length", "Petal.Width"];
const two = iris.filter((row) => row["Species"] !== "setosa");
const by = (rows: DiscriminantOptions["rows"], terms: readonly string[] = four, more: Partial<DiscriminantOptions> = {}) =>
  linearDiscriminant({ rows, label: "Species", terms, ...more });
const apart = (one: readonly number[], other: readonly number[]) => {
  expect(one.length).toBe(other.length);
  return Math.max(...one.map((value, k) => Math.abs(value - other[k]!)));
};

/** Signs of axes are arbitrary: R's are turned to ours. */
function held(found: LinearDiscriminant, name: string): void {
  const of = (what: string) => shapeReference(`${name} ${what}`);
  expectNear(found.axes.map(({ singularValue }) => singularValue), of("svd"), 1e-9); // prettier-ignore
  expectNear(found.axes.map(({ proportionOfTrace }) => proportionOfTrace), of("trace"), 1e-9); // prettier-ignore
  const p = found.terms.length;
  found.axes.forEach(({ coefficients }, k) => {
    const wanted = of("coefficients").slice(k * p, (k + 1) * p);
    const sign = Math.sign(wanted[0]! * coefficients[0]!);
    expectNear(coefficients.map((value) => sign * value), wanted, 1e-9); // prettier-ignore
    if (k === 0) expect(apart(found.rows.map(({ scores }) => sign * scores[0]!), of("scores").map((v) => v - mean(of("scores"))))).toBeLessThan(1e-9); // prettier-ignore
  });
  expect(found.resubstitution.confusion.flat()).toEqual(of("confusion"));
  expect(found.crossValidated.confusion.flat()).toEqual(of("confusion held out"));
  expect(apart(found.rows.flatMap(({ posterior }) => Object.values(posterior)), of("posterior"))).toBeLessThan(1e-10); // prettier-ignore
  expect(apart(found.rows.flatMap(({ heldOut }) => Object.values(heldOut.posterior)), of("posterior held out"))).toBeLessThan(1e-10); // prettier-ignore
}
const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

describe("iris, Fisher 1936, by MASS::lda (R)", () => {
  test("three species by four measures", () => {
    const found = by(iris);
    held(found, "iris");
    expect(found.resubstitution.confusion).toEqual([[50, 0, 0], [0, 48, 2], [0, 1, 49]]); // prettier-ignore
    expect(found.crossValidated.confusion).toEqual(found.resubstitution.confusion);
    const wrong = found.rows.filter((row) => row.heldOut.predicted !== row.label);
    expect(wrong.map(({ row }) => row + 1)).toEqual([71, 84, 134]);
    expect(found.rows[70]!.heldOut.posterior["versicolor"]).toBeCloseTo(0.17727267, 9);
    expect(found.rows[133]!.posterior["virginica"]).toBeCloseTo(0.27061187, 8);
    // MASS::lda(Species ~ ., iris, CV = TRUE) of R, to printed digits; the signs of axes are arbitrary.
    expectNear(found.axes.map(({ singularValue }) => singularValue), [48.642643802, 4.579982711], 1e-9); // prettier-ignore
    expectNear(found.axes.map(({ proportionOfTrace }) => proportionOfTrace), [0.991212605, 0.008787395], 1e-7); // prettier-ignore
    const printed = [[0.8293776423, 1.5344730677, -2.2012116556, -2.8104603088], [-0.02410214888, -2.16452123466, 0.93192121003, -2.83918785298]]; // prettier-ignore
    found.axes.forEach(({ coefficients }, k) => {
      const sign = Math.sign(coefficients[3]! * printed[k]![3]!);
      expectNear(coefficients.map((value) => sign * value), printed[k]!, 1e-9); // prettier-ignore
    });
    expectNear([found.wilks.lambda, found.wilks.f, found.wilks.df1, found.wilks.df2], [0.023438631, 199.14534, 8, 288], 3e-8);
    expectNear([found.wilks.pillai], [1.1918988], 1e-7);
    const chances = ([71, 134] as const).map((row) => {
      const { posterior, heldOut } = found.rows[row - 1]!;
      return [
        heldOut.posterior["versicolor"]!,
        heldOut.posterior["virginica"]!,
        posterior["versicolor"]!,
        posterior["virginica"]!,
      ];
    });
    expectNear(chances[0]!, [0.17727267, 0.82272733, 0.25322822, 0.74677178], 5e-8);
    expectNear(chances[1]!, [0.787623756, 0.21237624, 0.72938813, 0.27061187], 5e-8);
    const [lambda, f, df1, df2, p] = shapeReference("iris Wilks");
    expectNear([found.wilks.lambda, found.wilks.f, found.wilks.df1, found.wilks.df2], [lambda!, f!, df1!, df2!], 1e-9);
    expectNear([found.wilks.p], [p!], 1e-9);
    expectNear([found.wilks.pillai], shapeReference("iris Pillai").slice(0, 1), 1e-9);
    // Wilson limits of 3 in 150, Stata's and R's prop.test by the same formula: 0.0068 to 0.0572.
    expect(found.crossValidated.errorRate.estimate).toBe(0.02);
    expectNear([found.crossValidated.errorRate.lower, found.crossValidated.errorRate.upper], [0.0068, 0.0572], 0.005);
  });

  test("two measures, two species, priors, unequal classes", () => {
    held(by(iris, four.slice(0, 2)), "iris sepals");
    held(by(iris, four, { priors: { setosa: 0.2, versicolor: 0.5, virginica: 0.3 } }), "iris priors");
    held(by(two), "iris two");
    const unequal = by([...iris.slice(0, 80), ...iris.slice(100, 140)]);
    held(unequal, "iris unequal");
    expectNear([unequal.wilks.lambda, unequal.wilks.f, unequal.wilks.df1, unequal.wilks.df2], shapeReference("iris unequal Wilks").slice(0, 4), 1e-9); // prettier-ignore
    const { errors } = by(iris, four.slice(0, 2)).crossValidated;
    expect([by(iris, four.slice(0, 2)).resubstitution.errors, errors]).toEqual([30, 31]);
    expectNear([by(two).distances[0]!.d2], shapeReference("iris two d2"), 1e-9);
    expectNear([by(two).distances[0]!.d2], [14.21888581], 1e-9);
    const axis = by(two).axes[0]!.coefficients;
    expectNear(axis.map((value) => -Math.sign(axis[0]!) * value), [-0.943117786, -1.479428723, 1.848451034, 3.284730442], 1e-9); // prettier-ignore
    const sepals = by(iris, four.slice(0, 2));
    expect(sepals.resubstitution.confusion).toEqual([[49, 1, 0], [0, 36, 14], [0, 15, 35]]); // prettier-ignore
    expect(sepals.crossValidated.confusion).toEqual([[49, 1, 0], [0, 35, 15], [0, 15, 35]]); // prettier-ignore
    expect([by(two).resubstitution, by(two).crossValidated].map(({ confusion }) => confusion)).toEqual([[[48, 2], [1, 49]], [[48, 2], [1, 49]]]); // prettier-ignore
  });

  test("held out ten folds of 15 rows", () => {
    const rows = iris.map((row, i) => ({ ...row, fold: `f${i % 10}` }));
    const found = by(rows, four, { foldBy: "fold" });
    const posteriors = found.rows.flatMap(({ heldOut }) => Object.values(heldOut.posterior));
    expect(apart(posteriors, shapeReference("iris folds posterior held out"))).toBeLessThan(1e-10);
    expect(found.crossValidated.errorRate.method).toMatch(/cluster/i);
    expect(found.crossValidated.method).toBe("Held out: each fold by a rule made without it, 10 in all");
  });
});

describe("properties", () => {
  test("units, signs and the order of rows make no difference to what is said", () => {
    const plain = by(iris);
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0.01, max: 100, noNaN: true }), { minLength: 4, maxLength: 4 }),
        fc.array(fc.double({ min: -500, max: 500, noNaN: true }), { minLength: 4, maxLength: 4 }),
        fc.boolean(),
        (scales, shifts, reverse) => {
          const rows = iris.map((row) => ({
            ...row,
            ...Object.fromEntries(four.map((name, j) => [name, shifts[j]! - scales[j]! * Number(row[name])])),
          }));
          const other = by(reverse ? rows.reverse() : rows);
          const said = reverse ? [...other.rows].reverse() : other.rows;
          said.forEach((row, i) => {
            expect(row.posterior["virginica"]).toBeCloseTo(plain.rows[i]!.posterior["virginica"]!, 7);
            expect(row.heldOut.predicted).toBe(plain.rows[i]!.heldOut.predicted);
          });
          expectNear([other.wilks.lambda, other.distances[1]!.d2], [plain.wilks.lambda, plain.distances[1]!.d2], 1e-7);
        },
      ),
      { numRuns: 20 },
    );
  });

  test("predict says of a used row what the table says, null of an incomplete one", () => {
    const found = by(iris);
    const [a, b, c] = found.predict([iris[70]!, { ...iris[0]!, "Petal.Width": null }, { "Sepal.Length": 5 }]);
    expect(a).toEqual({ predicted: found.rows[70]!.predicted, posterior: found.rows[70]!.posterior });
    expect([b, c]).toEqual([null, null]);
    expect(faultCode(() => found.predict([{ ...iris[0]!, "Petal.Width": "wide" }]))).toBe("not_a_number");
  });

  test("rows of horses that differ: held out one by one flatters, held out by horse does not", () => {
    // No difference between ends; but each horse has only fore or only hind feet recorded, twenty of them, and its own shape.
    const random = seededRandom("horses");
    const rows = Array.from({ length: 20 }, (_, h) => {
      const own = [random.normal(0, 1), random.normal(0, 1), random.normal(0, 1), random.normal(0, 1), random.normal(0, 1)];
      return Array.from({ length: 10 }, () => ({
        horse: `h${h}`,
        end: h % 2 === 0 ? "fore" : "hind",
        ...Object.fromEntries(own.map((value, j) => [`m${j}`, value + random.normal(0, 0.2)])),
      }));
    }).flat();
    const options = { rows, label: "end", terms: ["m0", "m1", "m2", "m3", "m4"] };
    const single = linearDiscriminant(options).crossValidated.errorRate;
    const byHorse = linearDiscriminant({ ...options, foldBy: "horse" }).crossValidated.errorRate;
    expect(single.estimate!).toBeLessThan(byHorse.estimate! - 0.1);
    expect(byHorse.upper! - byHorse.lower!).toBeGreaterThan(2 * (single.upper! - single.lower!));
  });
});

describe("what is left out or refused", () => {
  test("rows with a null are counted", () => {
    const rows = [...iris, { ...iris[0]!, "Petal.Width": null }, { ...iris[0]!, Species: null }];
    const found = by(rows);
    expect(found.n).toBe(150);
    expect(found.dropped.map(({ column, count }) => [column, count])).toEqual([["Species", 1], ["Petal.Width", 1]]); // prettier-ignore
  });

  test("rows that are none, and numbers that are none", () => {
    expect(faultCode(() => by([...iris, null as unknown as (typeof iris)[0]]))).toBe("out_of_range");
    expect(faultCode(() => by(null as unknown as typeof iris))).toBe("empty");
    expect(faultCode(() => by([]))).toBe("empty");
    for (const value of [NaN, Infinity, "wide"]) {
      expect(faultCode(() => by([...iris, { ...iris[0]!, "Petal.Width": value }]))).toBe("not_a_number");
    }
  });

  test("constant and repeated terms, single classes, bad priors, in words", () => {
    const rows = iris.map((row, i) => ({
      ...row,
      one: 1,
      twice: 2 * Number(row["Sepal.Width"]),
      code: i < 50 ? 0 : i < 100 ? 1 : 5,
    }));
    expect(faultCode(() => by(rows, ["one", "Sepal.Width"]))).toBe("collinear");
    expect(faultCode(() => by(rows, ["twice", "Sepal.Width"]))).toBe("collinear");
    expect(() => by(rows, ["twice", "Sepal.Width"])).toThrow(/"twice".*"Sepal\.Width"/);
    expect(faultCode(() => by(rows, ["code", "Sepal.Width"]))).toBe("no_variation");
    expect(faultCode(() => by(iris.slice(0, 50)))).toBe("no_variation");
    expect(faultCode(() => by(iris, []))).toBe("out_of_range");
    expect(faultCode(() => by(iris, ["Petal"]))).toBe("unknown_column");
    expect(faultCode(() => by([...iris.slice(0, 2), ...iris.slice(60, 63)]))).toBe("too_few");
    expect(faultCode(() => by(iris, four, { priors: { setosa: 1 } }))).toBe("out_of_range");
    expect(faultCode(() => by(iris, four, { priors: { setosa: 0.5, versicolor: 0.2, virginica: 0.2 } }))).toBe("out_of_range");
  });

  test("a class that lives in one fold cannot be held out", () => {
    const rows = iris.map((row, i) => ({ ...row, fold: i < 50 ? "a" : `b${i % 5}` }));
    expect(faultCode(() => by(rows, four, { foldBy: "fold" }))).toBe("too_few");
    expect(() => by(rows, four, { foldBy: "fold" })).toThrow('Without "a" no row of class "setosa" is left');
  });
});
