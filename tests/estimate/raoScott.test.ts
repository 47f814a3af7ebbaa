import { expect, test } from "vitest";
import { raoScott } from "../../src/estimate/raoScott.js";
import { clustersOf, litters } from "./clusterData.js";
import { faultCode } from "./faultCode.js";
import { expectNear } from "./reference.js";

const groups = [litters.control, litters.treated];

// The textbook data of Rao & Scott 1992, Biometrics 48:577-585; values from R 4.2.2, aod::raoscott(cbind(y, n - y) ~ group).
test("litters of rats, separate design effects", () => {
  const { statistic, df, p, naive } = raoScott(groups);
  expectNear([statistic, df, p, naive.statistic], [4.0406105011, 1, 0.0444177505, 8.8998932236], 1e-9);
});

test("litters of rats, one pooled design effect", () => {
  const { statistic, p, pooledDesignEffect } = raoScott(groups, { designEffect: "pooled" });
  expectNear([pooledDesignEffect, statistic, p], [3.0688353665, 2.9000881965, 0.0885747061], 1e-9);
});

test("the order of groups and of clusters does not matter", () => {
  const turned = [[...litters.treated].reverse(), [...litters.control].reverse()];
  for (const designEffect of ["separate", "pooled"] as const) {
    expectNear([raoScott(turned, { designEffect }).statistic], [raoScott(groups, { designEffect }).statistic!], 1e-12);
  }
});

test("a group whose clusters are all alike counts with design effect 1, and it says so", () => {
  const result = raoScott([clustersOf("0/4 0/4 0/4"), clustersOf("2/4 4/4 1/4")]);
  expect(result.groups[0]!.designEffect).toBeNull();
  expect(result.note).toMatch(/1 of 2 groups/);
  // By hand: 7 of 12, divided by their own design effect, against 0 of 12.
  const [effect, p] = [result.groups[1]!.designEffect!, 7 / 12];
  const [n, cases] = [12 + 12 / effect, 7 / effect];
  const q = cases / n;
  expectNear([effect], [(1.5 * ((2 - 4 * p) ** 2 + (4 - 4 * p) ** 2 + (1 - 4 * p) ** 2)) / 12 / (p * (1 - p))], 1e-12);
  expectNear([result.statistic], [(12 * q ** 2 + (12 / effect) * (p - q) ** 2) / (q * (1 - q))], 1e-12);
});

test("when nothing is a case there is nothing to test", () => {
  const result = raoScott([clustersOf("0/4 0/4"), clustersOf("0/4 0/4")], { designEffect: "pooled" });
  expect([result.statistic, result.p, result.naive.statistic]).toEqual([null, null, null]);
});

test("one group, or a group of one cluster, is too few", () => {
  expect(faultCode(() => raoScott([litters.control]))).toBe("too_few");
  expect(faultCode(() => raoScott([litters.control, clustersOf("1/4")]))).toBe("too_few");
});
