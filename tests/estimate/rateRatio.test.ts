import fc from "fast-check";
import { expect, test } from "vitest";
import { rateRatio } from "../../src/estimate/rateRatio.js";
import { closedForm, closedFormCases } from "./closedForm.js";
import { faultCode } from "./faultCode.js";
import { expectNear } from "./reference.js";

// Example of R's ?poisson.test; R 4.2.2, log-Wald limits and the difference from their formulas.
test("11 in 800 against 21 in 3011", () => {
  const r = rateRatio(11, 800, 21, 3011);
  expectNear([r.estimate, r.lower, r.upper, r.p], [1.971488095, 0.8584264034, 4.277265944, 0.07966863303], 1e-9);
  expectNear([r.wald.lower, r.wald.upper], [0.950566096947, 4.08889536682], 1e-10);
  expectNear([r.difference.estimate, r.difference.se], [0.00677557289937, 0.00441631247483], 1e-10);
  const reach = 1.959963984540054 * 0.00441631247483;
  expectNear([r.difference.lower, r.difference.upper], [0.00677557289937 - reach, 0.00677557289937 + reach], 1e-9);
  expect(r.events).toBe(32);
});

test.each(closedFormCases("rate ratio "))("%s by R's poisson.test", (name) => {
  const [e1, t1, e2, t2] = name.split(" ").map(Number) as [number, number, number, number];
  const { estimate, lower, upper, p } = rateRatio(e1, t1, e2, t2);
  expectNear([estimate, lower, upper, p], closedForm(`rate ratio ${name}`), 1e-9);
});

test("swapping the groups inverts the ratio and flips the difference", () => {
  const events = fc.integer({ min: 1, max: 200 });
  const time = fc.double({ min: 0.1, max: 1e4, noNaN: true });
  fc.assert(
    fc.property(events, time, events, time, (e1, t1, e2, t2) => {
      const [one, other] = [rateRatio(e1, t1, e2, t2), rateRatio(e2, t2, e1, t1)];
      expectNear([other.lower, other.upper, other.p], [1 / one.upper!, 1 / one.lower!, one.p!], 1e-8);
      expect(one.lower! <= one.estimate! && one.estimate! <= one.upper!).toBe(true);
      expect(other.difference.estimate).toBeCloseTo(-one.difference.estimate!, 10);
    }),
  );
});

test("without events on one side or on both", () => {
  const none = rateRatio(0, 10, 3, 10);
  expect([none.estimate, none.lower, none.wald.lower]).toEqual([0, 0, null]);
  expect(none.upper).toBeGreaterThan(0);
  const one = rateRatio(3, 10, 0, 10);
  expect([one.estimate, one.upper]).toEqual([Infinity, Infinity]);
  expect(rateRatio(1, 10, 0, 10)).toMatchObject({ p: 1, difference: { estimate: 0.1 } });
  expect(rateRatio(1, 10, 0, 10).difference.upper).toBeGreaterThan(0.1);
  const nothing = rateRatio(0, 10, 0, 20);
  expect([nothing.estimate, nothing.p, nothing.lower, nothing.upper]).toEqual([null, null, 0, Infinity]);
  expect([nothing.difference.estimate, nothing.difference.lower]).toEqual([0, null]);
});

test("no time at risk is refused", () => {
  expect(faultCode(() => rateRatio(1, 10, 2, 0))).toBe("empty");
});

// R 4.2.2: poisson.test(c(400000, 402000), c(3, 3.01)) and the same with 3.005.
test("hundreds of thousands of events", () => {
  const [one, other] = [rateRatio(400_000, 3, 402_000, 3.01), rateRatio(400_000, 3, 402_000, 3.005)];
  expectNear([one.p, one.lower, one.upper], [0.457744553569, 0.99397879079, 1.00272359741], 1e-9);
  expectNear([other.p, other.lower, other.upper], [0.136918865233, 0.99232766323, 1.0010579436], 1e-9);
  expect(faultCode(() => rateRatio(1, 5e-324, 1, 1))).toBe("out_of_range");
});
