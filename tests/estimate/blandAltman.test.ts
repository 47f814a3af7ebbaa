import fc from "fast-check";
import { expect, test } from "vitest";
import { blandAltman } from "../../src/estimate/blandAltman.js";
import { closedForm } from "./closedForm.js";
import { faultCode } from "./faultCode.js";
import { expectNear } from "./reference.js";

// Bland & Altman 1986, Lancet 327:307-310: peak flow by two meters, data from memory. The paper prints -2.1, 38.8 and, with 2 standard
// deviations, -79.7 to 75.5 (from rounded values).
const large = [494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427];
const mini = [512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451];
const meters = large.map((first, i) => ({ first, second: mini[i]! }));

test("peak flow meters", () => {
  const two = blandAltman(meters, { multiplier: 2 });
  expectNear([two.bias.estimate, two.sd], [-2.12, 38.77], 2e-3);
  expectNear([two.lowerLimit.estimate, two.upperLimit.estimate], [-79.65, 75.41], 1e-4);
  const usual = blandAltman(meters);
  expectNear([usual.lowerLimit.estimate, usual.upperLimit.estimate], [-78.1, 73.86], 1e-4);
  expectNear([usual.bias.estimate, usual.sd, usual.bias.lower, usual.bias.upper], closedForm("bland-altman"), 1e-11);
  expect(usual.points[0]).toEqual({ mean: 503, difference: -18 });
});

test("limits of the limits by hand: sd sqrt(1/n + m^2 / (2 (n - 1))) times t on 16", () => {
  const { lowerLimit, sd } = blandAltman(meters, { multiplier: 2 });
  // qt(0.975, 16) = 2.119905, R 4.2.2.
  expectNear([lowerLimit.estimate - lowerLimit.lower!], [2.119905299221 * sd * Math.sqrt(1 / 17 + 4 / 32)], 1e-10);
});

test("exchanging the two flips the bias and turns the limits over", () => {
  const pair = fc.record({ first: fc.integer({ min: -50, max: 50 }), second: fc.integer({ min: -50, max: 50 }) });
  fc.assert(
    fc.property(fc.array(pair, { minLength: 2, maxLength: 30 }), (pairs) => {
      const one = blandAltman(pairs);
      const other = blandAltman(pairs.map(({ first, second }) => ({ first: second, second: first })));
      expect(other.bias.estimate).toBeCloseTo(-one.bias.estimate, 10);
      expect(other.lowerLimit.estimate).toBeCloseTo(-one.upperLimit.estimate, 10);
      expect(one.lowerLimit.estimate).toBeLessThanOrEqual(one.upperLimit.estimate);
    }),
  );
});

test("missing halves are counted; equal differences have no limits; one pair is too few", () => {
  const r = blandAltman([...meters, { first: 1, second: null }]);
  expect([r.n, r.missing]).toEqual([17, 1]);
  const steady = blandAltman([{ first: 3, second: 1 }, { first: 5, second: 3 }]); // prettier-ignore
  expect([steady.bias.estimate, steady.bias.lower, steady.sd]).toEqual([2, null, 0]);
  expect(faultCode(() => blandAltman([{ first: 3, second: 1 }]))).toBe("too_few");
  expect(faultCode(() => blandAltman([{ first: 3, second: NaN }]))).toBe("not_a_number");
});
