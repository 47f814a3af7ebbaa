import { expect, test } from "vitest";
import type { ToeGrowth } from "../../src/derive/toeGrowth.js";
import { toeGain } from "../../src/estimate/toeGain.js";

const span = (horseId: string, gainMm: number, days = 40): ToeGrowth => ({
  ...{ horseId, yardId: null, shod: "all", shoeing: "shod", ageClass: null, season: "winter", foot: "LF" },
  ...{ from: "2025-01-01", to: "2025-02-10", days, afterTrimMm: 80, beforeTrimMm: 80 + gainMm, gainMmPerDay: gainMm / days },
});

test("balanced horses: the mean is the mean, and horses are drawn towards it by the reliability", () => {
  const gains = [[8, 10], [10, 12], [12, 14], [6, 8]]; // prettier-ignore
  const rows = gains.flatMap(([one, other], k) => [span(`h${k}`, one!), span(`h${k}`, other!)]);
  const found = toeGain(rows)!;
  expect(found.mean.estimate).toBeCloseTo(10 / 40, 10);
  // One-way analysis of variance: between means 9, 11, 13, 7 the mean square is 2 x 20/3, within it is 2; shrinkage 1 - 2 / (40/3).
  const shrink = 1 - 2 / (40 / 3);
  found.ofHorses.forEach(({ estimate, n }, k) => {
    const own = (gains[k]![0]! + gains[k]![1]!) / 2;
    expect(estimate).toBeCloseTo((10 + shrink * (own - 10)) / 40, 5);
    expect(n).toBe(2);
  });
  expect(found.horseSd).toBeCloseTo(Math.sqrt((40 / 3 - 2) / 2) / 40, 5);
});

test("short spans are left out; one horse, or one span each, gives nothing", () => {
  const rows = [span("A", 8), span("A", 9), span("B", 10), span("B", 12), span("B", 30, 7)];
  expect(toeGain(rows)!.n).toBe(4);
  expect(toeGain(rows.slice(0, 2))).toBeNull();
  expect(toeGain([span("A", 8), span("B", 9)])).toBeNull();
  expect(toeGain([])).toBeNull();
});
