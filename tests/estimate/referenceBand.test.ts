import { describe, expect, test } from "vitest";
import { referenceBand } from "../../src/estimate/referenceBand.js";
import { seededRandom } from "../../src/estimate/numeric/seededRandom.js";
import { faultCode } from "./faultCode.js";
import { expectNear, referenceRows } from "./reference.js";
import { shapeReference } from "./shapeReference.js";

const sepals = referenceRows("iris.csv").map((row) => Number(row["Sepal.Length"]));

test("percentiles by quantile (R, type 7)", () => {
  const { percentiles, n, missing } = referenceBand([...sepals, null], { percentiles: [2.5, 10, 50, 90, 97.5] });
  expectNear(percentiles.map(({ estimate }) => estimate), shapeReference("quantiles sepal"), 1e-12); // prettier-ignore
  expect([n, missing]).toEqual([150, 1]);
});

test("ranks of the limits by qbinom (R)", () => {
  for (const n of [20, 39, 120, 150, 1000]) {
    const ranks = Array.from({ length: n }, (_, i) => i + 1);
    for (const p of [0.025, 0.1, 0.5, 0.975])
      for (const level of [0.9, 0.95]) {
        const [low, high] = shapeReference(`ranks ${n} ${p} ${level}`);
        const [{ lower, upper } = { lower: null, upper: null }] = referenceBand(ranks, {
          percentiles: [100 * p],
          level,
        }).percentiles;
        expect([lower, upper]).toEqual([low! < 1 ? null : low, high! > n ? null : high]);
      }
  }
});

test("120 values at 90 %: ranks 1 and 7, as tables of reference limits in laboratory medicine have it (from memory)", () => {
  const [low] = referenceBand(Array.from({ length: 120 }, (_, i) => i + 1), { level: 0.9 }).percentiles; // prettier-ignore
  expect([low!.lower, low!.upper]).toEqual([1, 7]);
});

test("too few values for a limit leave it out, in words", () => {
  const [low, middle] = referenceBand([3, 1, 2, 5, 4, 6, 8]).percentiles;
  expect(low).toMatchObject({ lower: null, note: "The lower limit lies beyond the 7 values there are." });
  expect(middle).toMatchObject({ estimate: 4, lower: 1, upper: 8, note: null });
  expect(referenceBand([3]).percentiles[1]).toMatchObject({ estimate: 3, lower: null, upper: null });
});

describe("coverage", () => {
  test("independent values: a 90 % interval of the 10th percentile covers at least nine times in ten", () => {
    const random = seededRandom("independent");
    let covered = 0;
    for (let study = 0; study < 2000; study += 1) {
      const values = Array.from({ length: 60 }, () => random.uniform());
      const { lower, upper } = referenceBand(values, { percentiles: [10], level: 0.9 }).percentiles[0]!;
      if (lower! <= 0.1 && upper! >= 0.1) covered += 1;
    }
    // Order statistics of 60 cover 0.92 (binomial 60, 0.1); three standard errors are 0.018.
    expect(covered / 2000).toBeGreaterThan(0.9);
    expect(covered / 2000).toBeLessThan(0.96);
  });

  test("four alike feet a horse: limits that know the horses cover, those that do not fall short", () => {
    const random = seededRandom("horses");
    let [knowing, blind] = [0, 0];
    for (let study = 0; study < 1000; study += 1) {
      const horses = Array.from({ length: 160 }, (_, i) => Math.floor(i / 4));
      const own = Array.from({ length: 40 }, () => random.normal());
      const values = horses.map((horse) => own[horse]! + random.normal(0, 0.3));
      // The median is 0.
      const [a] = referenceBand(values, { percentiles: [50], clusters: horses }).percentiles;
      const [b] = referenceBand(values, { percentiles: [50] }).percentiles;
      if (a!.lower! <= 0 && a!.upper! >= 0) knowing += 1;
      if (b!.lower! <= 0 && b!.upper! >= 0) blind += 1;
    }
    // Three standard errors of 1000 studies are 0.021; Woodruff's limits are approximate.
    expect(knowing / 1000).toBeGreaterThan(0.92);
    expect(knowing / 1000).toBeLessThan(0.98);
    expect(blind / 1000).toBeLessThan(0.8);
  });
});

test("horses named once count as independent; named twice the note says how many there are", () => {
  const plain = referenceBand(sepals);
  const single = referenceBand(sepals, { clusters: sepals.map((_, i) => i) });
  expect(single.percentiles).toEqual(plain.percentiles);
  expect([plain.clusters, single.clusters]).toEqual([null, 150]);
  expect(plain.note).toContain("name the horses");
  const pairs = referenceBand(sepals, { clusters: sepals.map((_, i) => i >> 1) });
  expect([pairs.clusters, pairs.note]).toEqual([75, "Values of one cluster may be alike; the limits allow for 75 clusters."]);
  expectNear(pairs.percentiles.map(({ estimate }) => estimate), plain.percentiles.map(({ estimate }) => estimate!), 1e-15); // prettier-ignore
});

test("what makes no sense is refused", () => {
  expect(faultCode(() => referenceBand([null]))).toBe("empty");
  expect(faultCode(() => referenceBand([1, NaN]))).toBe("not_a_number");
  expect(faultCode(() => referenceBand([1, 2], { percentiles: [0] }))).toBe("out_of_range");
  expect(faultCode(() => referenceBand([1, 2], { percentiles: [100] }))).toBe("out_of_range");
  expect(faultCode(() => referenceBand([1, 2], { percentiles: [101] }))).toBe("out_of_range");
  expect(faultCode(() => referenceBand([1, 2], { clusters: ["a"] }))).toBe("length_mismatch");
  expect(faultCode(() => referenceBand([1, 2], { level: 1 }))).toBe("out_of_range");
});
