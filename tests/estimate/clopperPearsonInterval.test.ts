import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { clopperPearsonInterval } from "../../src/estimate/clopperPearsonInterval.js";
import { closedForm, closedFormCases } from "./closedForm.js";
import { faultCode } from "./faultCode.js";
import { expectNear } from "./reference.js";

// Newcombe 1998, Stat Med 17:857-872, Table I, method 5, has the first four; digits from R 4.2.2, binom.test(81, 263)$conf.int.
test.each([
  [81, 263, 0.2527367456, 0.3676219226],
  [15, 148, 0.0578440101, 0.1616504903],
  [0, 20, 0, 0.168433471],
  [1, 29, 0.0008726469, 0.1776442955],
  [20, 20, 0.831566529, 1],
  [29, 29, 0.8805551309, 1],
  [0, 1, 0, 0.975],
  [1, 1, 0.025, 1],
  [12, 100, 0.0635689026, 0.2002356836],
  [7, 34, 0.0870213055, 0.3789777485],
])("%d of %d as published and by R", (cases, n, lower, upper) => {
  const interval = clopperPearsonInterval(cases, n);
  expect(interval.lower).toBeCloseTo(lower, 9);
  expect(interval.upper).toBeCloseTo(upper, 9);
});

test.each(closedFormCases("clopper-pearson "))("%s at other levels by R", (name) => {
  const [cases, n, level] = name.split(/[/ ]/).map(Number) as [number, number, number];
  const interval = clopperPearsonInterval(cases, n, { level });
  expectNear([interval.lower, interval.upper], closedForm(`clopper-pearson ${name}`), 1e-12);
});

test("without cases the upper limit is 1 - 0.025^(1/n)", () => {
  expectNear([clopperPearsonInterval(0, 250).upper], [1 - 0.025 ** (1 / 250)], 1e-12);
});

test("for any counts limits hold the estimate, stay within 0 and 1, and widen with the level", () => {
  const counts = fc.integer({ min: 1, max: 2000 }).chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n)));
  fc.assert(
    fc.property(counts, fc.double({ min: 0.01, max: 0.999, noNaN: true }), ([cases, n], level) => {
      const { estimate, lower, upper } = clopperPearsonInterval(cases, n, { level });
      const narrow = clopperPearsonInterval(cases, n, { level: level / 2 });
      expect(0 <= lower && lower <= narrow.lower && narrow.lower <= estimate).toBe(true);
      expect(estimate <= narrow.upper && narrow.upper <= upper && upper <= 1).toBe(true);
    }),
  );
});

describe("what no proportion can come from", () => {
  test.each([
    [0, 0, "empty"],
    [3, 2, "out_of_range"],
    [-1, 5, "not_a_count"],
    [0.5, 5, "not_a_count"],
    [NaN, 5, "not_a_number"],
  ])("%d of %d is %s", (cases, n, code) => {
    expect(faultCode(() => clopperPearsonInterval(cases, n))).toBe(code);
  });
});
