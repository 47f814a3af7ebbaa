import { expect, test } from "vitest";
import { contrastAtOneSize, type SizedValue } from "../../src/estimate/contrastAtOneSize.js";
import { seededRandom } from "../../src/estimate/numeric/seededRandom.js";
import { tQuantile } from "../../src/estimate/numeric/tQuantile.js";

const ends = ["fore", "fore", "hind", "hind"] as const;
// prettier-ignore
const sizes = [120, 122, 115, 116, 131, 128, 126, 124, 105, 107, 101, 100, 118, 117, 114, 116, 140, 138, 131, 133, 111, 112, 108, 105];
// prettier-ignore
const values = [1.04, 1.02, .96, .95, 1.06, 1.07, 1, .98, 1.01, .99, .95, .94, 1, 1.01, .95, .93, 1.08, 1.05, 1.01, 1, 1.03, 1.02, .97, .99];
const feet = sizes.flatMap((size, k): SizedValue[] =>
  k === 5 ? [] : [{ horseId: "ABCDEF"[Math.floor(k / 4)]!, end: ends[k % 4]!, size, value: values[k]! }],
);

// R 4.2.2, with ls = log(size), c = ls - mean(ls), and dd and ss the means of fore less hind of each horse:
// lme4 1.1-31 lmer(value ~ fore + c + (1 | horse)); lm(dd ~ ss); t.test(dd); expm1(t.test(ss)$conf.int). Inner degrees of freedom 23 - 6 - 2.
test("uneven numbers of feet: model, differences within horses and size, as R has them", () => {
  const found = contrastAtOneSize(feet);
  const { atOneSize, perTenPercent, asMeasured, withinHorses, foreLarger } = found;
  const t = tQuantile(0.975, 15);
  expect(atOneSize.estimate).toBeCloseTo(0.0534101094943, 7);
  expect(atOneSize.lower).toBeCloseTo(0.0534101094943 - t * 0.00619505174395, 7);
  expect(atOneSize.upper).toBeCloseTo(0.0534101094943 + t * 0.00619505174395, 7);
  expect(perTenPercent.estimate).toBeCloseTo(Math.log(1.1) * 0.1724834098078, 7);
  expect(perTenPercent.lower).toBeCloseTo(Math.log(1.1) * (0.1724834098078 - t * 0.07383635164735), 7);
  expect(withinHorses.estimate).toBeCloseTo(0.0699401480818, 10);
  expect(withinHorses.lower).toBeCloseTo(0.0120115159486, 10);
  expect(withinHorses.upper).toBeCloseTo(0.127868780215, 10);
  expect(asMeasured.estimate).toBeCloseTo(0.0616666666667, 10);
  expect(asMeasured.lower).toBeCloseTo(0.0503314662303, 10);
  expect(asMeasured.upper).toBeCloseTo(0.0730018671031, 10);
  expect(foreLarger.estimate).toBeCloseTo(0.0453026209567, 10);
  expect(foreLarger.lower).toBeCloseTo(0.0327075375688, 10);
  expect(foreLarger.upper).toBeCloseTo(0.0580513162045, 10);
  expect([found.feet, found.horses, found.missing]).toEqual([23, 6, 0]);
});

test("feet of one size within each horse: nothing is taken off, and the limits are those of the paired t", () => {
  const differences = [0.1, 0.08, 0.06, 0.12, -0.01];
  const rows = differences.flatMap((difference, k): SizedValue[] => [
    { horseId: `h${k}`, end: "fore", size: 100 + 7 * k, value: 1 + 0.03 * ((k * 3) % 5) + difference },
    { horseId: `h${k}`, end: "hind", size: 100 + 7 * k, value: 1 + 0.03 * ((k * 3) % 5) },
  ]);
  const { atOneSize, foreLarger } = contrastAtOneSize(rows);
  // R 4.2.2: t.test(c(.10, .08, .06, .12, -.01)) gives mean 0.07 and limits 0.0079168 and 0.1320832.
  expect(atOneSize.estimate).toBeCloseTo(0.07, 9);
  expect(atOneSize.lower).toBeCloseTo(0.0079168, 6);
  expect(atOneSize.upper).toBeCloseTo(0.1320832, 6);
  expect(foreLarger).toMatchObject({ estimate: 0, lower: null });
});

/** A herd whose measure goes with size and end as told; horses differ, and each foot has an error. */
function herd(seed: string, { end, slope, larger }: { end: number; slope: number; larger: number }): SizedValue[] {
  const random = seededRandom(seed);
  return Array.from({ length: 30 }, (_, k) => {
    const [own, logSize] = [random.normal(0, 0.03), random.normal(Math.log(120), 0.1)];
    return ends.map((each): SizedValue => {
      const footSize = logSize + (each === "fore" ? larger : 0) + random.normal(0, 0.015);
      const value = 1 + own + (each === "fore" ? end : 0) + slope * (footSize - Math.log(120)) + random.normal(0, 0.012);
      return { horseId: `h${k}`, end: each, size: Math.exp(footSize), value };
    });
  }).flat();
}

test("a difference that is size alone goes away at one size; one that size hides comes to light", () => {
  const sizeAlone = contrastAtOneSize(herd("size alone", { end: 0, slope: 0.6, larger: 0.08 }));
  expect(sizeAlone.asMeasured.lower).toBeGreaterThan(0.03);
  expect(sizeAlone.atOneSize.lower).toBeLessThan(0);
  expect(sizeAlone.atOneSize.upper).toBeGreaterThan(0);
  const hidden = contrastAtOneSize(herd("hidden", { end: 0.05, slope: -0.6, larger: 0.08 }));
  expect(Math.abs(hidden.asMeasured.estimate!)).toBeLessThan(0.015);
  expect(hidden.atOneSize.lower).toBeGreaterThan(0.03);
});

test("the interval at one size holds what was planted as often as it says", { timeout: 60_000 }, () => {
  const runs = 200;
  const held = Array.from({ length: runs }, (_, run) => {
    const { atOneSize, perTenPercent } = contrastAtOneSize(herd(`run ${run}`, { end: 0.05, slope: 0.3, larger: 0.05 }));
    const holds = ({ lower, upper }: typeof atOneSize, truth: number) => Number(lower! <= truth && truth <= upper!);
    return [holds(atOneSize, 0.05), holds(perTenPercent, 0.3 * Math.log(1.1))] as const;
  });
  // 95 % of 200 with three standard errors of a share, 0.046, on either side.
  for (const of of [0, 1] as const) {
    const share = held.reduce((sum, each) => sum + each[of], 0) / runs;
    expect(share).toBeGreaterThan(0.904);
    expect(share).toBeLessThan(0.997);
  }
});

test("the unit of size makes no difference, nor does the order of the feet", () => {
  const plain = contrastAtOneSize(feet);
  const inches = contrastAtOneSize(feet.map((row) => ({ ...row, size: row.size! / 25.4 })).reverse());
  expect(inches.atOneSize.estimate).toBeCloseTo(plain.atOneSize.estimate!, 9);
  expect(inches.atOneSize.upper).toBeCloseTo(plain.atOneSize.upper!, 9);
  expect(inches.lines[0]!.places[10]!.value).toBeCloseTo(plain.lines[0]!.places[10]!.value, 9);
});

test("lines run over the sizes of their end and lie the difference apart", () => {
  const { lines, atOneSize } = contrastAtOneSize(feet);
  expect(
    lines.map(({ end, places }) =>
      [end, places[0]!.size, places.at(-1)!.size].map((x) => (typeof x === "number" ? Math.round(x) : x)),
    ),
  ).toEqual([
    ["fore", 105, 140],
    ["hind", 100, 133],
  ]);
  const [fore, hind] = lines.map(({ places }) => places) as [(typeof lines)[0]["places"], (typeof lines)[0]["places"]];
  const slope = (fore[10]!.value - fore[0]!.value) / Math.log(fore[10]!.size / fore[0]!.size);
  expect(fore[0]!.value - hind[0]!.value - slope * Math.log(fore[0]!.size / hind[0]!.size)).toBeCloseTo(atOneSize.estimate!, 9);
});

test("what is missing is counted; what cannot be told is null with a reason; what is wrong is refused", () => {
  const gap = contrastAtOneSize([
    ...feet,
    { horseId: "A", end: "fore", size: null, value: 1 },
    { horseId: "A", end: "hind", size: 1, value: null },
  ]);
  expect(gap).toEqual({ ...contrastAtOneSize(feet), missing: 2 });
  const alike = feet.map((row) => ({ ...row, size: 120 }));
  const { atOneSize, asMeasured, notes, lines } = contrastAtOneSize(alike);
  expect(atOneSize).toMatchObject({
    estimate: null,
    lower: null,
    upper: null,
    note: expect.stringContaining("logSize") as string,
  });
  expect(notes).toEqual([atOneSize.note]);
  expect(lines).toEqual([]);
  expect(asMeasured.estimate).not.toBeNull();
  expect(() => contrastAtOneSize([])).toThrow(expect.objectContaining({ code: "empty" }));
  expect(() => contrastAtOneSize(feet.filter(({ end }) => end === "fore"))).toThrow(expect.objectContaining({ code: "empty" }));
  expect(() => contrastAtOneSize([{ ...feet[0]!, size: 0 }])).toThrow(expect.objectContaining({ code: "out_of_range" }));
  expect(() => contrastAtOneSize([{ ...feet[0]!, size: NaN }])).toThrow(expect.objectContaining({ code: "not_a_number" }));
  expect(() => contrastAtOneSize(feet, { level: 1 })).toThrow(expect.objectContaining({ code: "out_of_range" }));
});
