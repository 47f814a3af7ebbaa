import { expect, test } from "vitest";
import type { ShapeMeasureRow } from "../../src/derive/ShapeMeasureRow.js";
import { footTrends } from "../../src/estimate/footTrends.js";
import { seededRandom } from "../../src/estimate/numeric/seededRandom.js";
import { dateOfDay } from "../../src/study/dateOfDay.js";

const row = (footId: string, day: number, value: number, side: ShapeMeasureRow["side"] = "left"): ShapeMeasureRow => ({
  ...{ horseId: footId.slice(0, -3), footId, yardId: null, species: null, type: null, ageClass: null, shoeing: null },
  ...{ visitDate: dateOfDay(20_000 + day), daysSinceFirst: day, foot: "LF", end: "fore", side, stage: "before_trim" },
  ...{ observerId: null, measure: "toeHeelGapDeg", value },
});
const random = seededRandom("heels");
// Twenty feet, of which the first three gain 5 degrees in a year and the others nothing; reading error 0.7 degrees.
const rows = Array.from({ length: 20 }, (_, k) =>
  [0, 45, 90, 135, 180, 225, 270, 315, 360].map((day) =>
    row(`h${k} LF`, day, 4 + random.normal(0, 0.7) + (k % 4) / 2 + (k < 3 ? (5 * day) / 360 : 0)),
  ),
).flat();

test("feet with a planted trend are found, and no other", () => {
  const { feet, herdPer90Days } = footTrends(rows, { minimumDetectable: 1.96 * Math.SQRT2 * 0.7 });
  expect(feet.filter(({ real }) => real).map(({ footId }) => footId).sort()).toEqual(["h0 LF", "h1 LF", "h2 LF"]); // prettier-ignore
  for (const { footId, change } of feet) {
    const planted = Number(footId.slice(1, -3)) < 3 ? 5 : 0;
    // Nine readings of 0.7 degrees over a year: an error of the change of some 0.9, less by shrinkage.
    expect(Math.abs(change.estimate - planted), footId).toBeLessThan(1.8);
    expect(change.lower!).toBeLessThan(change.estimate);
  }
  // Three of twenty gain 1.25 in 90 days.
  expect(Math.abs(herdPer90Days!.estimate! - 0.1875)).toBeLessThan(0.15);
});

test("a change below the smallest detectable one is never called real, and without it nothing is known", () => {
  expect(footTrends(rows, { minimumDetectable: 6 }).feet.some(({ real }) => real)).toBe(false);
  expect(new Set(footTrends(rows).feet.map(({ real }) => real))).toEqual(new Set([null]));
});

test("days are counted, not rows; order and start do not matter", () => {
  const plain = footTrends(rows, { minimumDetectable: 2 });
  const later = rows.map((each) => ({ ...each, visitDate: dateOfDay(Date.parse(each.visitDate) / 86_400_000 + 700) }));
  footTrends([...later].reverse(), { minimumDetectable: 2 }).feet.forEach((foot) => {
    const same = plain.feet.find(({ footId }) => footId === foot.footId)!;
    expect(foot.change.estimate).toBeCloseTo(same.change.estimate, 6);
    expect([foot.days, foot.times]).toEqual([360, 9]);
  });
  expect(plain.feet[0]!.per90Days * 4).toBeCloseTo(plain.feet[0]!.change.estimate, 9);
});

test("specimens, single days and scant data have no trend, and the words say why", () => {
  const few = rows.filter(({ footId }) => footId === "h0 LF" || footId === "h1 LF");
  expect(footTrends(few)).toMatchObject({
    feet: [],
    herdPer90Days: null,
    note: expect.stringMatching(/^Fewer than three feet/) as string,
  });
  expect(footTrends([])).toMatchObject({ feet: [] });
  const more = footTrends([...rows, row("x LF", 0, 5), row("y F", 0, 5, null), row("y F", 90, 9, null)]);
  expect(more.feet).toHaveLength(20);
});
