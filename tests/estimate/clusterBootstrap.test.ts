import { describe, expect, test } from "vitest";
import { clusterBootstrap } from "../../src/estimate/clusterBootstrap.js";
import { clusteredProportion } from "../../src/estimate/clusteredProportion.js";
import { seededRandom } from "../../src/estimate/numeric/seededRandom.js";
import { swabs } from "./clusterData.js";
import { faultCode } from "./faultCode.js";

const share = (rows: readonly number[]) => rows.reduce((a, b) => a + b, 0) / rows.length;
const children = swabs().map(({ cases, n }) => Array.from({ length: n }, (_, i) => (i < cases ? 1 : 0)));

test("the error of a proportion is the clustered one, not the binomial one", () => {
  const r = clusterBootstrap(children, share, { random: seededRandom("swabs"), replicates: 4000 });
  const formula = clusteredProportion(swabs());
  expect(r.estimate).toBe(formula.estimate);
  // 4000 replicates leave about 1 % of error, K/(K-1) another 1 %; the binomial error is 20 % smaller.
  expect(Math.abs(r.se! / formula.se! - 1)).toBeLessThan(0.05);
  expect(Math.abs(r.lower! - formula.logitT.lower!)).toBeLessThan(0.02);
  expect(Math.abs(r.upper! - formula.logitT.upper!)).toBeLessThan(0.02);
  expect([r.clusters, r.replicates, r.failed, r.note]).toEqual([50, 4000, 0, null]);
});

test("the mean of cluster means, against its known variance", () => {
  // Clusters of one value 1..20: drawing 20 of them gives a mean with variance (20^2 - 1) / 12 / 20.
  const clusters = Array.from({ length: 20 }, (_, i) => [i + 1]);
  const { se } = clusterBootstrap(clusters, share, { random: seededRandom(3), replicates: 4000 });
  // Monte Carlo error of a standard deviation from 4000 draws: about 1.1 %; four times that.
  expect(Math.abs(se! / Math.sqrt(399 / 12 / 20) - 1)).toBeLessThan(0.045);
});

test("equal seeds give equal limits, a higher level wider ones", () => {
  const run = (seed: number, level: number) =>
    clusterBootstrap(children, share, { random: seededRandom(seed), replicates: 400, level });
  expect(run(1, 0.9)).toEqual(run(1, 0.9));
  expect(run(1, 0.9).lower).not.toBe(run(2, 0.9).lower);
  expect(run(1, 0.99).lower!).toBeLessThan(run(1, 0.9).lower!);
});

describe("when there is little to resample", () => {
  test("one cluster has no limits, few clusters a warning", () => {
    const one = clusterBootstrap([[1, 0]], share, { random: seededRandom(1) });
    expect([one.estimate, one.lower, one.upper]).toEqual([0.5, null, null]);
    const three = clusterBootstrap([[1, 0], [1], [0, 0]], share, { random: seededRandom(1) });
    expect(three.note).toMatch(/few/);
    expect(three.lower).not.toBeNull();
  });

  test("a statistic that often has no value has no limits", () => {
    const onlyFirst = (rows: readonly number[]) => (rows.includes(7) ? 1 : null);
    const r = clusterBootstrap([[7], [1], [2]], onlyFirst, { random: seededRandom(1), replicates: 200 });
    expect([r.estimate, r.lower, r.failed + r.replicates]).toEqual([1, null, 200]);
    expect(r.note).toMatch(/no value/);
  });

  test("nothing, NaN and too few replicates are refused", () => {
    const random = seededRandom(1);
    expect(faultCode(() => clusterBootstrap([[], []], share, { random }))).toBe("empty");
    expect(faultCode(() => clusterBootstrap([[1], [2]], () => NaN, { random }))).toBe("not_a_number");
    expect(faultCode(() => clusterBootstrap([[1], [2]], share, { random, replicates: 20 }))).toBe("too_few");
  });
});
