import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { cohenKappa } from "../../src/estimate/cohenKappa.js";
import { faultCode } from "./faultCode.js";
import { expectNear } from "./reference.js";

// Skin condition scored by two dermatologists, from the agreement example of SAS/STAT PROC FREQ. R 4.2.2, vcd 1.4-11: Kappa(M),
// Kappa(M, weights = "Equal-Spacing" | "Fleiss-Cohen"). In order: observed, expected, kappa, error, limits, error by chance, z.
const skin = [
  [10, 4, 1, 0],
  [5, 10, 12, 2],
  [2, 4, 12, 5],
  [0, 2, 6, 13],
];
// prettier-ignore
test.each([
  ["none", [0.511363636, 0.254132231, 0.344875346260, 0.072396687372, 0.202980446, 0.486770246, 0.061184719128, 5.636625471]],
  ["linear", [0.810606061, 0.614927686, 0.508160071540, 0.065508381035, 0.379766004, 0.636554139, 0.073896668035, 6.876630369]],
  ["quadratic", [0.919191919, 0.761822773, 0.660722891566, 0.061642832417, 0.539905160, 0.781540623, 0.106495182153, 6.204251481]],
] as const)("dermatologists, %s weights", (weights, wanted) => {
  const { observed, expected, estimate, se, lower, upper, se0, z } = cohenKappa(skin, { weights });
  // Nine printed digits.
  expectNear([observed, expected, estimate, se, lower, upper, se0, z], wanted, 3e-9);
});

// Cohen 1968, Psychol Bull 70:213-220, Table 1: kappa .492, weighted .348 with disagreement weights 0, 1, 3 / 1, 0, 6 / 3, 6, 0; errors
// from R 4.2.2 by the formula of Fleiss, Cohen & Everitt 1969.
test("Cohen's diagnoses", () => {
  const matrix = [
    [88, 14, 18],
    [10, 40, 10],
    [2, 6, 12],
  ];
  const weights = [
    [1, 1 - 1 / 6, 1 - 3 / 6],
    [1 - 1 / 6, 1, 0],
    [1 - 3 / 6, 0, 1],
  ];
  const found = (["none", weights, "linear", "quadratic"] as const).map((w) => cohenKappa(matrix, { weights: w }));
  expectNear(found.map((k) => k.estimate), [0.491525423729, 0.347826086957, 0.473684210526, 0.454545454545], 1e-11); // prettier-ignore
  expectNear(found.map((k) => k.se), [0.05100181558, 0.07550401525, 0.05443230918, 0.06645368159], 1e-9); // prettier-ignore
});

// vcd 1.4-11, SexualFun: answers of husband and wife.
test("husbands and wives", () => {
  const matrix = [
    [7, 7, 2, 3],
    [2, 8, 3, 7],
    [1, 5, 4, 9],
    [2, 8, 9, 14],
  ];
  const found = (["none", "linear", "quadratic"] as const).map((weights) => cohenKappa(matrix, { weights }));
  expectNear(found.map((k) => k.estimate), [0.12933025404, 0.23738062756, 0.33204558625], 1e-10); // prettier-ignore
  expectNear(found.map((k) => k.se), [0.06859853248, 0.07831633478, 0.09729752196], 1e-9); // prettier-ignore
});

test("20, 5, 10, 15: agreement 0.70, by chance 0.50, kappa 0.40 (a common textbook example)", () => {
  const k = cohenKappa([[20, 5], [10, 15]]); // prettier-ignore
  expectNear([k.observed, k.expected, k.estimate, k.prevalenceIndex, k.biasIndex], [0.7, 0.5, 0.4, 0.1, 0.1], 1e-12);
  expect([k.agreement.cases, k.agreement.n]).toEqual([35, 50]);
  // R 4.2.2: Fleiss, Cohen & Everitt's error by chance, sqrt((pe + pe^2 - sum(r c (r + c))) / n) / (1 - pe), and 2 pnorm(-z).
  expectNear([k.se0, k.z, k.p], [0.13856406460551016, 2.88675134594812954, 0.00389241712277862], 1e-12);
});

describe("edges", () => {
  test("observers who always agree: kappa 1, no limits, agreement has some", () => {
    const k = cohenKappa([[3, 0], [0, 4]]); // prettier-ignore
    expect([k.estimate, k.se, k.lower, k.upper]).toEqual([1, null, null, null]);
    expect(k.agreement.lower).toBeLessThan(1);
    expect(k.note).toMatch(/agree throughout/);
  });

  test("one category only: kappa has no meaning", () => {
    const k = cohenKappa([[7, 0], [0, 0]]); // prettier-ignore
    expect([k.estimate, k.lower, k.p]).toEqual([null, null, null]);
  });

  test.each([
    [[[1, 2], [3]], {}, "length_mismatch"],
    [
      [
        [1, 2, 3],
        [4, 5, 6],
      ],
      {},
      "length_mismatch",
    ],
    [[[4]], {}, "too_few"],
    [
      [
        [0, 0],
        [0, 0],
      ],
      {},
      "empty",
    ],
    [
      [
        [1, 0.5],
        [0, 1],
      ],
      {},
      "not_a_count",
    ],
    [
      [
        [1, 1],
        [1, 1],
      ],
      { weights: [[1, 0]] },
      "length_mismatch",
    ],
    [
      [
        [1, 1],
        [1, 1],
      ],
      {
        weights: [
          [1, 2],
          [0, 1],
        ],
      },
      "out_of_range",
    ],
    [
      [
        [1, 1],
        [1, 1],
      ],
      {
        weights: [
          [0.5, 0],
          [0, 1],
        ],
      },
      "out_of_range",
    ],
  ])("%j with %j is %s", (matrix, options, code) => {
    // prettier-ignore
    expect(faultCode(() => cohenKappa(matrix, options))).toBe(code);
  });
});

test("for any ratings: limits hold kappa within -1 and 1, exchanging the observers changes nothing", () => {
  const cell = fc.integer({ min: 0, max: 30 });
  const square = fc.array(fc.array(cell, { minLength: 3, maxLength: 3 }), { minLength: 3, maxLength: 3 });
  fc.assert(
    fc.property(square, fc.constantFrom("none" as const, "linear" as const, "quadratic" as const), (matrix, weights) => {
      fc.pre(matrix.flat().some((count) => count > 0));
      const one = cohenKappa(matrix, { weights });
      const other = cohenKappa(matrix.map((_, j) => matrix.map((row) => row[j]!)), { weights }); // prettier-ignore
      if (one.estimate === null) expect(other.estimate).toBeNull();
      else expect(other.estimate).toBeCloseTo(one.estimate, 10);
      if (one.lower === null || one.upper === null) return;
      expect(-1 <= one.lower && one.lower <= one.estimate! && one.estimate! <= one.upper && one.upper <= 1).toBe(true);
    }),
  );
});

test("two categories weigh the same whatever the weights", () => {
  const [none, quadratic] = (["none", "quadratic"] as const).map((weights) => cohenKappa([[20, 5], [10, 15]], { weights })); // prettier-ignore
  expectNear([none!.estimate, none!.se], [quadratic!.estimate!, quadratic!.se!], 1e-12);
});
