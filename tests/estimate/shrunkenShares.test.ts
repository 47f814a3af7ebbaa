import { expect, test } from "vitest";
import { fitMixedLogistic } from "../../src/estimate/fitMixedLogistic.js";
import { shrunkenShares } from "../../src/estimate/shrunkenShares.js";
import { faultCode } from "./faultCode.js";
import { referenceRows } from "./reference.js";

const herds = referenceRows("cbpp.csv").flatMap(({ herd, period, incidence, size }) =>
  Array.from({ length: Number(size) }, (_, i) => ({ herd: String(herd), period: Number(period), ill: i < Number(incidence) })),
);
const cattle = { rows: herds, outcome: "ill", terms: [{ column: "period", reference: 1 }], group: "herd" } as const;

test("herds of cattle, against R", () => {
  // R 4.2.2, lme4 1.1-31: glmer(cbind(incidence, size - incidence) ~ period + (1 | herd), cbpp, binomial, nAGQ = 25), ranef with condVar;
  // share of a herd sum(size * plogis(eta + u)) / sum(size), limits at u -+ 1.959964 sd; overall by integrate() over the spread.
  const wanted: Record<string, [number, number, number]> = {
    "1": [0.182776, 0.104233, 0.297713],
    "4": [0.116569, 0.056202, 0.223086],
    "7": [0.228786, 0.139281, 0.349632],
    "12": [0.106566, 0.048702, 0.214169],
    "13": [0.060804, 0.029805, 0.118944],
  };
  const { shares, overall, sd } = shrunkenShares(cattle);
  expect(shares).toHaveLength(15);
  for (const [herd, [estimate, lower, upper]] of Object.entries(wanted)) {
    const found = shares.find(({ group }) => group === herd)!;
    // glmer stops with its SD some 1e-4 off.
    expect(found.estimate).toBeCloseTo(estimate, 4);
    expect(found.lower).toBeCloseTo(lower, 4);
    expect(found.upper).toBeCloseTo(upper, 4);
  }
  expect(sd).toBeCloseTo(0.647518, 3);
  expect(overall).toBeCloseTo(0.126667, 4);
});

test("every herd lies between its own risk and that of all, and the small ones are drawn in furthest", () => {
  const plain = shrunkenShares({ ...cattle, terms: [] });
  for (const { cases, n, estimate } of plain.shares) {
    const [low, high] = [cases / n, plain.overall].sort((a, b) => a - b) as [number, number];
    // The typical herd has a risk a little below the mean of all.
    expect(estimate).toBeGreaterThan(low - 0.01);
    expect(estimate).toBeLessThan(high + 0.01);
  }
});

test("horses within yards: averaged over the horses a yard could have", () => {
  const rows = referenceRows("sim-nested-feet.csv").map((row) => ({
    ...row,
    yard: String(row["yard"]),
    horse: String(row["horse"]),
  }));
  const options = { rows, outcome: "y", terms: ["wet", "hind"] } as const;
  const { shares } = shrunkenShares({ ...options, group: "yard", within: "horse" });
  const fit = fitMixedLogistic({ ...options, groups: ["yard", "horse"] });
  const [b0, wet, hind] = fit.coefficients.map(({ estimate }) => estimate) as [number, number, number];
  const { group, mode } = fit.conditionalModes[0]![3]!;
  // By a plain sum over a fine grid of horses, in place of the quadrature.
  let [sum, total] = [0, 0];
  for (let z = -8; z <= 8; z += 0.02)
    for (const row of rows as unknown as { wet: number; hind: number }[]) {
      const density = Math.exp((-z * z) / 2);
      sum += density / (1 + Math.exp(-(b0 + wet * row.wet + hind * row.hind + mode + fit.groups[1]!.sd * z)));
      total += density;
    }
  expect(shares.find((share) => share.group === group[0])!.estimate).toBeCloseTo(sum / total, 8);
});

test("averaged over some rows only, the level moves and the order stays", () => {
  const all = shrunkenShares(cattle).shares;
  const first = shrunkenShares({ ...cattle, averagedOver: ({ period }) => period === 1 }).shares;
  const order = (shares: typeof all) => [...shares].sort((a, b) => a.estimate - b.estimate).map(({ group }) => group);
  expect(order(first)).toEqual(order(all));
  // In the first period the disease was most frequent.
  expect(first[0]!.estimate).toBeGreaterThan(all[0]!.estimate);
  expect(faultCode(() => shrunkenShares({ ...cattle, averagedOver: () => false }))).toBe("empty");
});

test("row order and names do not matter", () => {
  const backwards = shrunkenShares({ ...cattle, rows: [...herds].reverse() });
  shrunkenShares(cattle).shares.forEach(({ group, estimate }, i) => {
    expect(backwards.shares[i]!.group).toBe(group);
    // The order of sums moves the last digits of the maximum.
    expect(backwards.shares[i]!.estimate).toBeCloseTo(estimate, 7);
  });
});
