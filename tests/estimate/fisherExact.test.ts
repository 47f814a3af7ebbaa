import fc from "fast-check";
import { expect, test } from "vitest";
import { fisherExact } from "../../src/estimate/fisherExact.js";
import { closedForm, closedFormCases } from "./closedForm.js";
import { faultCode } from "./faultCode.js";
import { expectNear } from "./reference.js";

const cellsOf = (name: string) => name.split(" ").map(Number) as [number, number, number, number];

test.each(closedFormCases("fisher p "))("p of %s by R's fisher.test", (name) => {
  const { p, pGreater, pLess } = fisherExact(...cellsOf(name));
  expectNear([p, pGreater, pLess], closedForm(`fisher p ${name}`), 1e-10);
});

test.each(closedFormCases("fisher odds "))("odds ratio of %s by R's hypergeometric weights, solved to full precision", (name) => {
  const { estimate, lower, upper } = fisherExact(...cellsOf(name)).oddsRatio;
  expectNear([estimate, lower, upper], closedForm(`fisher odds ${name}`), 1e-10);
});

// R 4.2.2, examples of ?fisher.test: tea tasting and convictions of twins. Its root search stops at 1e-4 of the odds ratio or of its
// inverse (uniroot's default), hence the tolerances; p values are exact.
test("tea tasting", () => {
  const { p, pGreater, oddsRatio, n } = fisherExact(3, 1, 1, 3);
  expect(n).toBe(8);
  expectNear([p, pGreater], [34 / 70, 17 / 70], 1e-12);
  expectNear([oddsRatio.estimate, oddsRatio.lower, oddsRatio.upper], [6.40830886701, 0.211732915306, 621.933750545], 1e-2);
  const greater = fisherExact(3, 1, 1, 3, { alternative: "greater" }).oddsRatio;
  expectNear([greater.lower], [0.31356926411], 1e-4);
  expect(greater.upper).toBe(Infinity);
});

test("the upper limit of tea tasting by hand: 2.5 % of at most three right", () => {
  // Weights 1, 16, 36, 16, 1 of 0 to 4 right; at odds ratio t four right have probability t^4 / (1 + 16t + 36t^2 + 16t^3 + t^4).
  const t = fisherExact(3, 1, 1, 3).oddsRatio.upper!;
  expectNear([t ** 4 / (1 + 16 * t + 36 * t ** 2 + 16 * t ** 3 + t ** 4)], [0.975], 1e-12);
});

test("convictions of twins", () => {
  const { p, pLess, oddsRatio } = fisherExact(2, 15, 10, 3);
  expectNear([p, pLess], [0.000536724119143, 0.000465180943], 1e-9);
  expectNear([oddsRatio.estimate, oddsRatio.lower, oddsRatio.upper], [0.046936608828, 0.003325764034, 0.363182271475], 3e-3);
  const at99 = fisherExact(2, 15, 10, 3, { level: 0.99 }).oddsRatio;
  expectNear([at99.lower, at99.upper], [0.00138633287155, 0.57885164459479], 2e-2);
});

test("an open end is infinite or 0, and an empty margin says nothing", () => {
  const all = fisherExact(4, 0, 0, 4).oddsRatio;
  expect([all.estimate, all.upper]).toEqual([Infinity, Infinity]);
  expect(all.lower).toBeGreaterThan(1);
  const none = fisherExact(0, 4, 4, 0).oddsRatio;
  expect([none.estimate, none.lower]).toEqual([0, 0]);
  const empty = fisherExact(3, 4, 0, 0);
  expect([empty.p, empty.oddsRatio.estimate, empty.oddsRatio.lower, empty.oddsRatio.upper]).toEqual([1, null, 0, Infinity]);
  expect(empty.oddsRatio.note).toMatch(/margin/);
});

test("for any table limits hold the estimate, widen with the level, and turn over with the groups", () => {
  const cell = fc.integer({ min: 0, max: 40 });
  fc.assert(
    fc.property(cell, cell, cell, cell, (a, b, c, d) => {
      fc.pre(a + b > 0 && c + d > 0 && a + c > 0 && b + d > 0);
      const one = fisherExact(a, b, c, d);
      const { estimate, lower, upper } = one.oddsRatio as { estimate: number; lower: number; upper: number };
      expect(lower <= estimate && estimate <= upper).toBe(true);
      const wide = fisherExact(a, b, c, d, { level: 0.99 }).oddsRatio;
      expect(wide.lower! <= lower && wide.upper! >= upper).toBe(true);
      const other = fisherExact(c, d, a, b);
      expectNear([other.p, other.pLess], [one.p, one.pGreater], 1e-9);
      if (upper < Infinity && lower > 0) expectNear([other.oddsRatio.lower, other.oddsRatio.upper], [1 / upper, 1 / lower], 1e-8);
    }),
  );
});

test("an empty table is refused", () => {
  expect(faultCode(() => fisherExact(0, 0, 0, 0))).toBe("empty");
  expect(faultCode(() => fisherExact(1, -1, 2, 2))).toBe("not_a_count");
});

// R 4.2.2: fisher.test(matrix(c(20000, 21000, 20500, 21010), 2))$p.value.
test("tens of thousands in each cell; what would take a machine hours is refused", () => {
  expectNear([fisherExact(20_000, 21_000, 20_500, 21_010).p], [0.0829126260562], 1e-8);
  expect(faultCode(() => fisherExact(2e6, 2e6, 2e6, 2e6))).toBe("out_of_range");
});
