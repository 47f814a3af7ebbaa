import fc from "fast-check";
import { expect, test } from "vitest";
import { intervalCensoredIncidence } from "../../src/estimate/intervalCensoredIncidence.js";
import { climateReference } from "./climateReference.js";
import { faultCode } from "./faultCode.js";
import { gaps } from "./gaps.js";
import { expectNear } from "./reference.js";

// R 4.2.2: optimise and numDeriv on the likelihood, the estimate held to survival 3.5-3 survreg(type = "interval2", dist = "exponential").
test("a rate with gaps as independent, profile limits", () => {
  const plain = gaps().map(({ days, event }) => ({ days, event }));
  const rate = intervalCensoredIncidence(plain, { perDays: 1 });
  const wanted = (quantity: string) => climateReference("censored rate", quantity);
  // optimise and numDeriv leave about 1e-7.
  expectNear([rate.estimate], wanted("hazard"), 1e-6);
  expectNear([rate.seLog], wanted("se log"), 1e-6);
  expectNear([rate.lower, rate.upper], wanted("profile"), 1e-6);
  expect([rate.events, rate.n, rate.missing, rate.clusters]).toEqual([6, 16, 0, null]);
});

test("limits by cluster", () => {
  const rate = intervalCensoredIncidence(gaps(), { perDays: 1 });
  expectNear([rate.seLog], climateReference("censored rate", "se log by cluster"), 1e-6);
  expectNear([rate.lower, rate.upper], climateReference("censored rate", "limits by cluster"), 1e-6);
  expect([rate.clusters, rate.note]).toEqual([5, "5 clusters are few: the limits may be too narrow."]);
});

test("equal gaps have a closed form: -log(1 - events / gaps) / days", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 30 }),
      fc.integer({ min: 1, max: 30 }),
      fc.integer({ min: 1, max: 90 }),
      (events, clear, days) => {
        const rows = Array.from({ length: events + clear }, (_, place) => ({ days, event: place < events }));
        const rate = intervalCensoredIncidence(rows, { perDays: 30.4375 });
        expectNear([rate.estimate], [(-Math.log(clear / (events + clear)) / days) * 30.4375], 1e-9);
        expect(rate.atLaterLook < rate.midpoint && rate.atLaterLook < rate.estimate!).toBe(true);
        expect(rate.lower! < rate.estimate! && rate.estimate! < rate.upper!).toBe(true);
      },
    ),
  );
});

test("no event: the upper limit is where no event has one chance in forty", () => {
  const rate = intervalCensoredIncidence(
    [
      { days: 40, event: false },
      { days: 60, event: false },
      { days: 30, event: null },
    ],
    { perDays: 100 },
  );
  expect([rate.estimate, rate.lower, rate.missing]).toEqual([0, 0, 1]);
  expectNear([Math.exp(-rate.upper!)], [0.025], 1e-12);
});

test("an event in every gap has no estimate, one cluster no limits", () => {
  expect(intervalCensoredIncidence([{ days: 40, event: true }]).estimate).toBeNull();
  const one = intervalCensoredIncidence([
    { days: 40, event: true, cluster: "a" },
    { days: 30, event: false, cluster: "a" },
  ]);
  expect([one.estimate! > 0, one.lower, one.upper]).toEqual([true, null, null]);
});

test("nothing known, or gaps of no days, are refused", () => {
  expect(faultCode(() => intervalCensoredIncidence([{ days: 3, event: null }]))).toBe("empty");
  expect(faultCode(() => intervalCensoredIncidence([{ days: 0, event: true }]))).toBe("out_of_range");
});
