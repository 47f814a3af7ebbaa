import { expect, test } from "vitest";
import { attributableFraction, type ExposureRow } from "../../src/estimate/attributableFraction.js";
import { seededRandom } from "../../src/estimate/numeric/seededRandom.js";
import { faultCode } from "./faultCode.js";
import { expectNear } from "./reference.js";
import { seasons } from "./strataData.js";

const rowsOf = (a: number, b: number, c: number, d: number, stratum?: string): ExposureRow[] => {
  const part = (count: number, exposed: boolean, found: boolean) =>
    Array.from({ length: count }, (_, i): ExposureRow => {
      const row = { case: found, exposed, cluster: `yard ${i % 6}` };
      return stratum === undefined ? row : { ...row, stratum };
    });
  return [...part(a, true, true), ...part(b, true, false), ...part(c, false, true), ...part(d, false, false)];
};

test("one stratum: (risk of all - risk of the unexposed) / risk of all, Levin's form of the same", () => {
  const r = attributableFraction(rowsOf(30, 20, 15, 35), { random: seededRandom(1), replicates: 200 });
  expectNear([r.population.estimate], [(45 / 100 - 15 / 50) / (45 / 100)], 1e-12);
  expectNear([r.exposed.estimate, r.riskRatio, r.exposedShare], [0.5, 2, 30 / 45], 1e-12);
  expect(r.population.lower! < r.population.estimate! && r.population.estimate! < r.population.upper!).toBe(true);
});

test("strata: the Mantel-Haenszel risk ratio by hand (Miettinen 1974)", () => {
  const [winter, summer] = seasons;
  const rows = [
    ...rowsOf(winter!.a, winter!.b, winter!.c, winter!.d, "winter"),
    ...rowsOf(summer!.a, summer!.b, summer!.c, summer!.d, "summer"),
  ];
  const r = attributableFraction(rows, { random: seededRandom(1), replicates: 200 });
  const rr = ((30 * 40) / 90 + (10 * 80) / 130) / ((15 * 50) / 90 + (8 * 50) / 130);
  expectNear([r.riskRatio, r.population.estimate], [rr, (40 / 63) * (1 - 1 / rr)], 1e-12);
  expect([r.n, r.cases]).toEqual([220, 63]);
});

test("missing rows are counted; no exposed case means nothing goes with the exposure", () => {
  const rows = [...rowsOf(0, 10, 5, 5), { case: null, exposed: true, cluster: "x" }, { case: true, exposed: null, cluster: "x" }];
  const r = attributableFraction(rows, { random: seededRandom(1), replicates: 100 });
  expect([r.missing, r.n, r.population.estimate, r.exposed.estimate]).toEqual([2, 20, 0, null]);
});

test("nothing exposed leaves no ratio; nothing known is refused", () => {
  const none = attributableFraction(rowsOf(0, 0, 5, 5), { random: seededRandom(1), replicates: 100 });
  expect([none.riskRatio, none.exposed.estimate, none.exposed.lower]).toEqual([null, null, null]);
  const all = attributableFraction(rowsOf(5, 5, 0, 0), { random: seededRandom(1), replicates: 100 });
  expect([all.population.estimate, all.exposedShare]).toEqual([null, 1]);
  expect(faultCode(() => attributableFraction([], { random: seededRandom(1) }))).toBe("empty");
});
