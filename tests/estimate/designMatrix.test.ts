import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { designMatrix } from "../../src/estimate/designMatrix.js";
import { EstimateError } from "../../src/estimate/EstimateError.js";
import type { Term } from "../../src/estimate/Term.js";

const feet = [
  { horse: "Bracken", wet: 1, hind: false, ground: "clay", on: "2025-01-01", thrush: true, feet: 4 },
  { horse: "Bracken", wet: 3, hind: true, ground: "sand", on: "2025-04-02", thrush: false, feet: 4 },
  { horse: "Sorrel", wet: 4, hind: false, ground: "peat", on: "2025-07-02", thrush: true, feet: 0 },
  { horse: "Sorrel", wet: 8, hind: true, ground: "clay", on: "2025-10-01", thrush: false, feet: 2 },
  { horse: "Teasel", wet: 5, hind: false, ground: "peat", on: "2025-12-31", thrush: false, feet: 3 },
];

const columnsOf = (terms: readonly Term[]) => {
  const { names, columns } = designMatrix(feet, terms);
  return Object.fromEntries(names.map((name, j) => [name, [...columns[j]!]]));
};

function faultOf(make: () => unknown): EstimateError {
  try {
    make();
  } catch (fault) {
    if (fault instanceof EstimateError) return fault;
    throw fault;
  }
  throw new Error("nothing was thrown");
}

describe("terms become columns", () => {
  test("numbers and booleans, intercept first", () => {
    expect(Object.entries(columnsOf(["wet", "hind"]))).toEqual([
      ["intercept", [1, 1, 1, 1, 1]],
      ["wet", [1, 3, 4, 8, 5]],
      ["hind", [0, 1, 0, 1, 0]],
    ]);
  });

  test("no intercept when none is wanted", () => {
    expect(designMatrix(feet, ["wet"], { intercept: false }).names).toEqual(["wet"]);
  });

  test("centred at a mean, at a number, per ten units, per standard deviation", () => {
    // mean 4.2; sum of squared deviations 26.8, variance 6.7
    const near = (values: readonly number[] | undefined, wanted: readonly number[]) => {
      wanted.forEach((value, i) => {
        expect(values?.[i]).toBeCloseTo(value, 12);
      });
    };
    near(columnsOf([{ column: "wet", centre: true }])["wet"], [-3.2, -1.2, -0.2, 3.8, 0.8]);
    near(columnsOf([{ column: "wet", centre: 4, per: 10 }])["wet per 10"], [-0.3, -0.1, 0, 0.4, 0.1]);
    near(columnsOf([{ column: "wet", centre: true, scale: true }])["wet per SD"], [-3.2 / Math.sqrt(6.7)]);
    near(columnsOf([{ column: "wet", scale: 4 }])["wet per 4"], [0.25, 0.75, 1, 2, 1.25]);
  });

  test("a category against its reference, in declared or sorted order", () => {
    expect(columnsOf([{ column: "ground", reference: "clay" }])).toEqual({
      intercept: [1, 1, 1, 1, 1],
      "ground: peat": [0, 0, 1, 0, 1],
      "ground: sand": [0, 1, 0, 0, 0],
    });
    const declared = designMatrix(feet, [{ column: "ground", reference: "clay", levels: ["sand", "clay", "peat"] }]);
    expect(declared.names).toEqual(["intercept", "ground: sand", "ground: peat"]);
    expect(Object.keys(columnsOf([{ column: "hind", reference: true }]))).toEqual(["intercept", "hind: false"]);
    expect(Object.keys(columnsOf([{ column: "feet", reference: 4, levels: [0, 2, 3] }]))).toContain("feet: 2");
  });

  test("products of numbers and categories", () => {
    const crossed = columnsOf([{ product: ["wet", { column: "ground", reference: "clay" }] }]);
    expect(crossed["wet × ground: peat"]).toEqual([0, 0, 4, 0, 5]);
    expect(crossed["wet × ground: sand"]).toEqual([0, 3, 0, 0, 0]);
  });

  test("each column knows its term", () => {
    expect(designMatrix(feet, ["wet", { column: "ground", reference: "clay" }]).termOf).toEqual([-1, 0, 1, 1]);
  });

  test("the season turns once in 365.25 days from 1 January 1970", () => {
    const season = columnsOf([{ season: "on", harmonics: 1 }]);
    // 2025-01-01 is day 20089 = 55 x 365.25 + 0.25; 2025-04-02 is 91 days later.
    const angle = (2 * Math.PI) / 365.25;
    expect(season["on: sine"]?.[0]).toBeCloseTo(Math.sin(0.25 * angle), 10);
    expect(season["on: cosine"]?.[1]).toBeCloseTo(Math.cos(91.25 * angle), 10);
    const twice = designMatrix(feet, [{ season: "on", harmonics: 2 }]);
    expect(twice.names).toEqual(["intercept", "on: sine", "on: cosine", "on: sine 2", "on: cosine 2"]);
    expect(twice.columns[3]?.[1]).toBeCloseTo(Math.sin(2 * 91.25 * angle), 10);
  });
});

describe("rows left out are counted once, under the first column that fails", () => {
  const gaps = [
    { y: 1, x: 1, w: 1 },
    { y: null, x: null, w: 1 },
    { y: 2, x: undefined, w: 1 },
    { y: 3, x: 5, w: 0 },
    { y: 4, x: 7, w: 2 },
    { x: 7, w: 2 },
  ];

  test("and the counts add up", () => {
    const design = designMatrix(gaps, ["x"], { outcome: "y", positive: ["w"] });
    expect([...design.used]).toEqual([0, 4]);
    expect(design.dropped).toEqual([
      { column: "y", reason: "y is not recorded", count: 2 },
      { column: "x", reason: "x is not recorded", count: 1 },
      { column: "w", reason: "w is 0", count: 1 },
    ]);
  });

  test("whatever is missing", () => {
    const cell = fc.option(fc.integer({ min: 0, max: 3 }), { freq: 5 });
    fc.assert(
      fc.property(fc.array(fc.record({ y: cell, x: cell, w: cell }), { minLength: 1 }), (rows) => {
        const complete = rows.filter(({ y, x, w }) => y !== null && x !== null && w !== null && w > 0);
        fc.pre(new Set(complete.map(({ x }) => x)).size > 1);
        const { n, dropped } = designMatrix(rows, ["x"], { outcome: "y", positive: ["w"] });
        expect(n).toBe(complete.length);
        expect(dropped.reduce((sum, { count }) => sum + count, n)).toBe(rows.length);
      }),
    );
  });
});

describe("what cannot be used is refused in words", () => {
  const refused = (terms: readonly Term[], code: string, words: RegExp, rows: readonly object[] = feet) => {
    const fault = faultOf(() => designMatrix(rows, terms));
    expect(fault.code).toBe(code);
    expect(`${fault.message} ${fault.hint}`).toMatch(words);
  };

  test("an unknown column, with the nearest name", () => {
    refused(["wett"], "unknown_column", /"wett".*"wet"/);
    refused([{ product: ["wet", "hinds"] }], "unknown_column", /"hinds".*"hind"/);
    refused(["nothing like it"], "unknown_column", /The columns are .*wet/);
  });

  test("NaN and infinity, with column and row", () => {
    refused(["x"], "not_a_number", /"x" holds NaN in row 2/, [{ x: 1 }, { x: Number.NaN }, { x: 3 }]);
    refused(["x"], "not_a_number", /"x" holds -Infinity in row 3/, [{ x: 1 }, { x: 2 }, { x: -Infinity }]);
  });

  test("text without a reference", () => {
    refused(["ground"], "not_a_number", /"ground" holds "clay" in row 1.*reference: "clay"/);
  });

  test("a date that is none", () => {
    refused([{ season: "on" }], "not_a_date", /"on" holds "2025-02-30" in row 1/, [{ on: "2025-02-30" }, { on: "2025-03-01" }]);
  });

  test("levels that do not fit the rows", () => {
    refused([{ column: "ground", reference: "clay", levels: ["sand"] }], "out_of_range", /"peat" in row 3/);
    refused([{ column: "ground", reference: "chalk" }], "no_variation", /"chalk".*"clay", "sand", "peat"/);
    refused([{ column: "ground", reference: "clay" }], "no_variation", /Every row used has "clay"/, [{ ground: "clay" }]);
  });

  test("terms that make no sense", () => {
    refused([{ product: ["wet"] }], "out_of_range", /at least two/);
    refused([{ season: "on", harmonics: 3 as 2 }], "out_of_range", /3 harmonics/);
    refused([{ column: "wet", scale: 2, per: 10 }], "out_of_range", /both scale and per/);
    refused([{ column: "wet", per: 0 }], "out_of_range", /unit 0/);
    refused([{ column: "wet", per: -10 }], "out_of_range", /unit -10/);
  });

  test("columns that repeat each other, by name", () => {
    const rows = feet.map((foot, i) => ({ ...foot, dry: 9 - foot.wet, year: 2025, i }));
    refused(["i", "wet", "dry"], "collinear", /"wet", "dry" repeat/, rows);
    refused(["year"], "collinear", /"year" is 2025 in every row/, rows);
    refused(["wet", { column: "wet", per: 10 }], "collinear", /"wet", "wet per 10"/);
  });

  test("nearly the same is not the same", () => {
    const rows = feet.map((foot, i) => ({ ...foot, again: foot.wet + 1e-5 * (i % 2) }));
    expect(designMatrix(rows, ["wet", "again"]).n).toBe(5);
  });

  test("more coefficients than rows", () => {
    refused(["wet", "feet", "hind", "thrush", { product: ["wet", "feet"] }], "too_few", /6 coefficients and 5 usable rows/);
  });

  test("no usable row", () => {
    refused(["x"], "empty", /None of 2 rows.*x is not recorded in 2/, [{ x: null }, { x: null }]);
    refused(["x"], "empty", /None of 0 rows/, []);
  });

  test("a negative weight", () => {
    expect(faultOf(() => designMatrix([{ x: 1, w: -1 }], ["x"], { positive: ["w"] })).code).toBe("out_of_range");
  });
});

test("the rows given are left as they were", () => {
  const frozen = Object.freeze(feet.map((foot) => Object.freeze({ ...foot })));
  designMatrix(frozen, ["wet", { column: "feet", centre: true }], { outcome: "thrush" });
  expect(frozen).toEqual(feet);
});
