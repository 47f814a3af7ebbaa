import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { mcnemar } from "../../src/estimate/mcnemar.js";
import { closedForm } from "./closedForm.js";
import { faultCode } from "./faultCode.js";
import { expectNear } from "./reference.js";

// Approval ratings, example of R's ?mcnemar.test (Agresti 1990, p. 350); R 4.2.2, mid-P as exact p minus dbinom(86, 236, 1/2).
test("approval ratings", () => {
  const r = mcnemar(150, 86);
  expectNear([r.corrected.statistic, r.corrected.p], [16.81779661, 4.11456228e-5], 1e-8);
  expectNear([r.chiSquare.statistic, r.chiSquare.p], [17.3559322, 3.09929344e-5], 1e-8);
  expectNear([r.exactP, r.midP], [3.71593613957e-5, 2.89338951762e-5], 1e-10);
  expect(r.discordant).toBe(236);
});

test("12 against 2 by hand: exact p 106/8192", () => {
  const r = mcnemar(12, 2);
  expectNear([r.exactP, r.midP], [106 / 8192, 106 / 8192 - 91 / 16384], 1e-12);
  expectNear([r.exactP, r.midP], [0.012939453125, 0.00738525390625], 1e-12);
  expectNear([r.chiSquare.statistic, r.corrected.statistic], [100 / 14, 81 / 14], 1e-14);
});

test.each([
  [150, 86],
  [12, 2],
  [0, 5],
  [7, 7],
  [21, 9],
])("%d against %d by R's binom.test and mcnemar.test", (b, c) => {
  const r = mcnemar(b, c);
  expectNear([r.exactP, r.chiSquare.statistic, r.corrected.statistic], closedForm(`mcnemar ${b} ${c}`), 1e-11);
  expectNear([r.oddsRatio.lower, r.oddsRatio.upper], closedForm(`mcnemar odds ${b} ${c}`), 1e-10);
});

describe("edges", () => {
  test("no pair disagrees: nothing to test", () => {
    const r = mcnemar(0, 0);
    expect([r.exactP, r.midP, r.chiSquare.p, r.oddsRatio.estimate, r.oddsRatio.lower]).toEqual([null, null, null, null, null]);
  });

  test("all disagree one way: the ratio is infinite with a lower limit", () => {
    const { oddsRatio } = mcnemar(6, 0);
    expect([oddsRatio.estimate, oddsRatio.upper]).toEqual([Infinity, Infinity]);
    expect(oddsRatio.lower).toBeGreaterThan(1);
  });

  test("half pairs are refused", () => {
    expect(faultCode(() => mcnemar(1.5, 2))).toBe("not_a_count");
    expect(faultCode(() => mcnemar(-1, 2))).toBe("not_a_count");
  });
});

test("swapping the halves keeps p and inverts the ratio; mid-P lies between 0 and exact", () => {
  const count = fc.integer({ min: 1, max: 200 });
  fc.assert(
    fc.property(count, count, (b, c) => {
      const [one, other] = [mcnemar(b, c), mcnemar(c, b)];
      expectNear([other.exactP, other.midP, other.oddsRatio.lower], [one.exactP!, one.midP!, 1 / one.oddsRatio.upper!], 1e-8);
      expect(one.midP! > 0 && one.midP! < one.exactP! && one.exactP! <= 1).toBe(true);
    }),
  );
});

// R 4.2.2: binom.test(1e6, 2e6 + 3000)$p.value.
test("a million pairs", () => {
  expectNear([mcnemar(1e6, 1e6 + 3000).exactP], [0.0340883650794], 1e-10);
  expect(mcnemar(1e9, 1e9).exactP).toBeCloseTo(1, 4);
});
