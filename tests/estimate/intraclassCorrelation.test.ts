import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { intraclassCorrelation } from "../../src/estimate/intraclassCorrelation.js";
import { closedForm } from "./closedForm.js";
import { faultCode } from "./faultCode.js";
import { expectNear } from "./reference.js";

// Shrout & Fleiss 1979, Psychol Bull 86:420-428, Table 2: six targets, four judges. The paper prints .17 .29 .71 .44 .62 .91; the limits are
// those that R package psych 2.2.9 prints for its ICC example of the same table, from memory.
const judges = [
  [9, 2, 5, 8],
  [6, 1, 3, 2],
  [8, 4, 6, 8],
  [7, 1, 2, 6],
  [10, 5, 6, 9],
  [6, 2, 4, 7],
];
const forms = ["1,1", "2,1", "3,1", "1,k", "2,k", "3,k"] as const;

test.each([
  ["1,1", 0.17, -0.133, 0.72],
  ["2,1", 0.29, 0.019, 0.76],
  ["3,1", 0.71, 0.342, 0.95],
  ["1,k", 0.44, -0.884, 0.91],
  ["2,k", 0.62, 0.071, 0.93],
  ["3,k", 0.91, 0.676, 0.99],
] as const)("form %s of the published table", (form, estimate, lower, upper) => {
  const icc = intraclassCorrelation(judges, { form });
  expect(icc.estimate).toBeCloseTo(estimate, 2);
  expect(icc.lower).toBeCloseTo(lower, 2.9);
  expect(icc.upper).toBeCloseTo(upper, 2);
});

test("mean squares by R's anova, single forms by the variance components of lme4", () => {
  const icc = (form: (typeof forms)[number]) => intraclassCorrelation(judges, { form }).estimate;
  const { meanSquares } = intraclassCorrelation(judges);
  expectNear([meanSquares.between, meanSquares.observers, meanSquares.residual], closedForm("icc mean squares"), 1e-12);
  expectNear([meanSquares.within], closedForm("icc within"), 1e-12);
  // lmer stops at about 1e-6.
  expectNear([icc("1,1")], closedForm("icc 1 1"), 1e-5);
  expectNear([icc("2,1")], closedForm("icc 2 1"), 1e-5);
  expectNear([icc("3,1")], closedForm("icc 3 1"), 1e-5);
});

describe("for any measurements", () => {
  const matrix = fc
    .integer({ min: 2, max: 4 })
    .chain((k) =>
      fc.array(fc.array(fc.integer({ min: 0, max: 40 }), { minLength: k, maxLength: k }), { minLength: 3, maxLength: 12 }),
    )
    .filter((rows) => new Set(rows.flat()).size > 1);

  test("limits hold the estimate and widen with the level", () => {
    fc.assert(
      fc.property(matrix, fc.constantFrom(...forms), (rows, form) => {
        const one = intraclassCorrelation(rows, { form });
        if (one.lower === null || one.upper === null) return;
        expect(one.lower <= one.estimate! && one.estimate! <= one.upper && one.upper <= 1).toBe(true);
        const wide = intraclassCorrelation(rows, { form, level: 0.99 });
        // The degrees of freedom may be so few that the wider level's quantile is beyond any number.
        if (wide.lower === null || wide.upper === null) return;
        // Far from chance a limit nears its bound at every level, and only rounding is left between them.
        expect(wide.lower <= one.lower + 1e-12 && wide.upper >= one.upper - 1e-12).toBe(true);
      }),
    );
  });

  test("row order, shifting and stretching change nothing; the mean of k agrees better than one", () => {
    fc.assert(
      fc.property(matrix, fc.constantFrom(...forms), (rows, form) => {
        const one = intraclassCorrelation(rows, { form });
        fc.pre(Math.abs(one.estimate ?? Infinity) < 1e3);
        const other = intraclassCorrelation(rows.map((row) => row.map((x) => 1e5 + 3 * x)).reverse(), { form });
        expect(other.estimate).toBeCloseTo(one.estimate!, 7);
      }),
    );
  });

  test("a steady difference between observers lowers form 2 and leaves form 3", () => {
    const shifted = judges.map((row) => row.map((x, j) => x + 10 * j));
    const icc = (rows: number[][], form: "2,1" | "3,1") => intraclassCorrelation(rows, { form }).estimate!;
    expect(icc(shifted, "3,1")).toBeCloseTo(icc(judges, "3,1"), 10);
    expect(icc(shifted, "2,1")).toBeLessThan(icc(judges, "2,1"));
  });
});

test("measurements that agree less than by chance: the limit of the mean is open below, not turned over", () => {
  const rows = [
    [0, 0, 2, 2],
    [2, 4, 3, 1],
  ];
  const icc = intraclassCorrelation(rows, { form: "2,k" });
  expect(icc.lower).toBe(-Infinity);
  expect(icc.upper).toBeGreaterThan(icc.estimate!);
  const crossed = intraclassCorrelation([[-2, -1], [-1, -2]]); // prettier-ignore
  expect([crossed.lower, crossed.upper]).toEqual([null, null]);
});

test("rows with a null are left out and counted", () => {
  const icc = intraclassCorrelation([...judges, [4, null, 5, 6]]);
  expect([icc.n, icc.missing, icc.observers]).toEqual([6, 1, 4]);
  expect(icc.estimate).toBe(intraclassCorrelation(judges).estimate);
});

test("repeats that agree exactly have no limits", () => {
  const icc = intraclassCorrelation([[1, 1], [2, 2], [5, 5]], { form: "1,1" }); // prettier-ignore
  expect([icc.estimate, icc.lower, icc.upper]).toEqual([1, null, null]);
});

test.each([
  [[[1, 2]], "too_few"],
  [[[1], [2]], "too_few"],
  [[[1, 2], [3]], "length_mismatch"],
  [
    [
      [1, 1],
      [1, 1],
    ],
    "no_variation",
  ],
  [
    [
      [1, NaN],
      [2, 2],
      [3, 1],
    ],
    "not_a_number",
  ],
])("%j is %s", (rows, code) => {
  expect(faultCode(() => intraclassCorrelation(rows))).toBe(code);
});
