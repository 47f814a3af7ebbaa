import fc from "fast-check";
import { expect, test } from "vitest";
import { trueFromApparent } from "../../src/estimate/trueFromApparent.js";
import { wilsonInterval } from "../../src/estimate/wilsonInterval.js";
import { faultCode } from "./faultCode.js";
import { expectNear } from "./reference.js";

test("worked by hand from the definition: apparent 0.25, sensitivity 0.9, specificity 0.8", () => {
  const r = trueFromApparent(0.25, 0.9, 0.8, { n: 400 });
  expectNear([r.estimate, r.se], [0.05 / 0.7, Math.sqrt((0.25 * 0.75) / 400) / 0.7], 1e-12);
  const apparent = wilsonInterval(100, 400);
  expectNear([r.upper], [(apparent.upper - 0.2) / 0.7], 1e-12);
  expectNear([r.lower], [(apparent.lower - 0.2) / 0.7], 1e-12);
});

test("it undoes what the examination does", () => {
  const share = fc.double({ min: 0, max: 1, noNaN: true });
  fc.assert(
    fc.property(
      share,
      fc.double({ min: 0.6, max: 1, noNaN: true }),
      fc.double({ min: 0.6, max: 1, noNaN: true }),
      (truth, sensitivity, specificity) => {
        const apparent = Math.min(1, truth * sensitivity + (1 - truth) * (1 - specificity));
        const r = trueFromApparent(apparent, sensitivity, specificity, { n: 60 });
        expect(r.estimate).toBeCloseTo(truth, 9);
        expect(0 <= r.lower! && r.lower! <= r.estimate && r.estimate <= r.upper! && r.upper! <= 1).toBe(true);
      },
    ),
  );
});

test("a perfect examination changes nothing", () => {
  const r = trueFromApparent(0.3, 1, 1, { n: 50 });
  const { lower, upper } = wilsonInterval(15, 50);
  expectNear([r.estimate, r.lower, r.upper], [0.3, lower, upper], 1e-12);
});

test("fewer positives than false alarms alone would give is cut to 0 and said", () => {
  const r = trueFromApparent(0.05, 0.9, 0.9, { n: 100 });
  expect(r.estimate).toBe(0);
  expect(r.uncut).toBeCloseTo(-0.0625, 12);
  expect(r.note).toMatch(/was cut/);
});

test("without a number examined there are no limits", () => {
  expect(trueFromApparent(0.3, 0.9, 0.9)).toMatchObject({ lower: null, upper: null, se: null });
});

test.each([
  [0.3, 0.5, 0.5, "out_of_range"],
  [0.3, 0.2, 0.7, "out_of_range"],
  [1.2, 0.9, 0.9, "out_of_range"],
  [0.3, 1.1, 0.9, "out_of_range"],
  [NaN, 0.9, 0.9, "not_a_number"],
])("%d with %d and %d is %s", (apparent, sensitivity, specificity, code) => {
  expect(faultCode(() => trueFromApparent(apparent, sensitivity, specificity))).toBe(code);
});
