import { expect, test } from "vitest";
import { casePersistence } from "../../src/estimate/casePersistence.js";
import { clusteredProportion } from "../../src/estimate/clusteredProportion.js";
import { wilsonInterval } from "../../src/estimate/wilsonInterval.js";
import { climateReference } from "./climateReference.js";
import { faultCode } from "./faultCode.js";
import { gaps } from "./gaps.js";
import { expectNear } from "./reference.js";

test("share still a case by hand (10 of 16), rate of clearing as survival::survreg", () => {
  const { share, gapDays, clearing } = casePersistence([...gaps(), { days: 20, event: null, cluster: "a" }], { perDays: 1 });
  expect([share.cases, share.n, share.missing, share.estimate, share.clusters]).toEqual([10, 16, 1, 0.625, 5]);
  const { logitT } = clusteredProportion([
    { cases: 3, n: 4 },
    { cases: 1, n: 3 },
    { cases: 2, n: 3 },
    { cases: 3, n: 4 },
    { cases: 1, n: 2 },
  ]);
  expectNear([share.lower, share.upper], [logitT.lower!, logitT.upper!], 1e-12);
  expectNear([clearing.estimate], climateReference("censored rate", "hazard"), 1e-6);
  // Median of the sixteen known gaps: the eighth and ninth are 42 and 44.
  expect(gapDays.median).toBe(43);
});

test("without clusters Wilson limits, and said so", () => {
  const { share } = casePersistence(gaps().map(({ days, event }) => ({ days, event })));
  const wilson = wilsonInterval(10, 16);
  expect([share.lower, share.upper, share.clusters]).toEqual([wilson.lower, wilson.upper, null]);
  expect(share.note).toMatch(/independent/);
});

test("no gap known is refused", () => {
  expect(faultCode(() => casePersistence([{ days: 20, event: null }]))).toBe("empty");
});
