import { expect, test } from "vitest";
import { donnerTest } from "../../src/estimate/donnerTest.js";
import { clustersOf, litters } from "./clusterData.js";
import { faultCode } from "./faultCode.js";
import { expectNear } from "./reference.js";

const groups = [litters.control, litters.treated];

// R package aod, donner(cbind(y, n - y) ~ group): prints the common correlation to four digits.
test("litters of rats", () => {
  const { statistic, df, p, icc, groups: parts } = donnerTest(groups);
  expectNear([statistic], [2.760970447], 1e-9);
  expect(df).toBe(1);
  expect(p).toBeCloseTo(0.0966, 4);
  expect(icc).toBeCloseTo(0.2506, 4);
  expectNear(
    parts.map(({ correction }) => correction),
    [3.350336732, 3.115204622],
    1e-9,
  );
  expectNear(
    parts.map(({ estimate }) => estimate),
    [0.898734177215, 0.772413793103],
    1e-11,
  );
});

test("the order of groups and of clusters does not matter, and clusters nobody looked at do not count", () => {
  const turned = [[{ cases: 0, n: 0 }, ...[...litters.treated].reverse()], [...litters.control].reverse()];
  expectNear([donnerTest(turned).statistic], [donnerTest(groups).statistic!], 1e-12);
});

test("pairs worked by hand: correlation 1, so each pair counts as one", () => {
  const { statistic, icc, groups: parts } = donnerTest([clustersOf("2/2 2/2 0/2 2/2"), clustersOf("0/2 0/2 2/2 0/2")]);
  expectNear([icc, ...parts.map(({ correction }) => correction)], [1, 2, 2], 1e-14);
  // Three of four pairs against one of four: chi-square 2.
  expectNear([statistic], [2], 1e-14);
});

test("what cannot be tested has no statistic and says why", () => {
  const none = donnerTest([clustersOf("0/4 0/4"), clustersOf("0/4 0/3")]);
  expect([none.statistic, none.p, none.note]).toEqual([null, null, expect.stringMatching(/None/)]);
  const single = donnerTest([clustersOf("1/1 0/1"), clustersOf("0/1 0/1")]);
  expect([single.statistic, single.icc, single.note]).toEqual([null, null, expect.stringMatching(/two members/)]);
  const throughout = donnerTest([clustersOf("4/4 3/3"), clustersOf("0/4 0/3")]);
  expect([throughout.statistic, throughout.icc]).toEqual([null, null]);
  // Pairs that never agree beside one large litter.
  const opposed = donnerTest([clustersOf("1/2 1/2 1/2 6/12"), clustersOf("1/2 1/2 1/2 5/12")]);
  expect([opposed.statistic, opposed.note]).toEqual([null, expect.stringMatching(/below zero/)]);
});

test("one group, a group of one cluster, an empty group and more cases than members are refused", () => {
  expect(faultCode(() => donnerTest([litters.control]))).toBe("too_few");
  expect(faultCode(() => donnerTest([litters.control, clustersOf("1/4")]))).toBe("too_few");
  expect(faultCode(() => donnerTest([litters.control, []]))).toBe("empty");
  expect(faultCode(() => donnerTest([litters.control, clustersOf("5/4 1/4")]))).toBe("out_of_range");
});
