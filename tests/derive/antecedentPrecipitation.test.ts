import { expect, test } from "vitest";
import { antecedentPrecipitation } from "../../src/derive/antecedentPrecipitation.js";
import { dateOfDay } from "../../src/study/dateOfDay.js";
import { gaugeDay } from "../study.js";
import { seattleRain } from "./seattleRain.js";

const seattleDays = seattleRain();

const series = (rain: readonly (number | null)[]) =>
  rain.map((rainMm, place) => gaugeDay({ gaugeId: "G", date: dateOfDay(20_000 + place), rainMm }));
const index = (rain: readonly (number | null)[], decayPerDay: number, start?: number, warmUpDays = 1) =>
  antecedentPrecipitation(series(rain), { decayPerDay, warmUpDays, ...(start === undefined ? {} : { start }) }).map(
    (row) => row.apiMm,
  );

// Worked by hand from the definition, index = decay × index of the day before + rain; six decimals were kept.
test.each([
  [0.85, 0, [0, 12, 10.2, 8.67, 12.3695, 30.514075, 25.936964, 22.046419, 18.739456, 18.928538]],
  [0.9, 0, [0, 12, 10.8, 9.72, 13.748, 32.3732, 29.13588, 26.222292, 23.600063, 24.240057]],
  [0.95, 0, [0, 12, 11.4, 10.83, 15.2885, 34.524075, 32.797871, 31.157978, 29.600079, 31.120075]],
  [0.9, 20, [18, 28.2, 25.38, 22.842, 25.5578, 43.00202, 38.701818, 34.831636, 31.348473, 31.213625]],
])("a worked series, decay %d from %d mm", (decay, start, expected) => {
  const found = index([0, 12, 0, 0, 5, 20, 0, 0, 0, 3], decay, start);
  expected.forEach((value, place) => {
    expect(found[place]).toBeCloseTo(value, 6);
  });
});

// One-step examples as printed on public calculator pages.
test("published single steps", () => {
  expect(index([5], 0.9, 10)[0]).toBeCloseTo(14, 12);
  expect(index([10], 0.8, 15)[0]).toBeCloseTo(22, 12);
});

// Identities quoted from Kohler & Linsley 1951: steady rain P settles at P / (1 - decay); the index halves in ln 2 / -ln decay days.
test("steady rain settles, a dry spell halves", () => {
  expect(index(Array<number>(400).fill(3), 0.9).at(-1)).toBeCloseTo(30, 9);
  const halfLife = Math.log(2) / -Math.log(0.9);
  expect(halfLife).toBeCloseTo(6.578813, 6);
  const dry = index([100, ...Array<number>(7).fill(0)], 0.9);
  expect(dry[6]).toBeGreaterThan(50);
  expect(dry[7]).toBeLessThan(50);
});

// Computed from the file with independent Python code from the same definition; six decimals were kept.
test.each([
  [0.85, 43.910547, 0.017305, 6.581581, 91.279899, 26.298238, 111.566583, "2015-12-08"],
  [0.9, 62.266608, 0.065615, 12.128023, 117.167409, 53.600727, 138.503406, "2015-11-17"],
  [0.95, 97.248634, 0.747163, 30.65013, 175.588162, 137.559143, 201.347478, "2015-12-09"],
])("Seattle, decay %d", (decayPerDay, january, october, year2013, march, year2015, most, mostOn) => {
  const rows = antecedentPrecipitation(seattleDays, { decayPerDay, warmUpDays: 60, start: 0 });
  const on = (date: string) => rows.find((row) => row.date === date)?.apiMm;
  expect(on("2012-01-31")).toBeCloseTo(january, 6);
  expect(on("2012-10-11")).toBeCloseTo(october, 6);
  expect(on("2013-12-31")).toBeCloseTo(year2013, 6);
  expect(on("2014-03-08")).toBeCloseTo(march, 6);
  expect(on("2015-12-31")).toBeCloseTo(year2015, 6);
  const top = rows.reduce((a, b) => (b.apiMm! > a.apiMm! ? b : a));
  expect(top.date).toBe(mostOn);
  expect(top.apiMm).toBeCloseTo(most, 6);
  if (decayPerDay === 0.9) expect(rows.reduce((sum, row) => sum + row.apiMm!, 0) / rows.length).toBeCloseTo(29.96413, 5);
});

test("without a known start the index waits for the warm-up, and then hardly depends on what was before", () => {
  const options = { decayPerDay: 0.9, warmUpDays: 60 };
  const waited = antecedentPrecipitation(seattleDays, options);
  const known = antecedentPrecipitation(seattleDays, { ...options, start: 50 });
  expect(waited.findIndex((row) => row.apiMm !== null)).toBe(59);
  // 50 mm × 0.9^60 = 0.0899 mm.
  expect(known[59]!.apiMm! - waited[59]!.apiMm!).toBeCloseTo(50 * 0.9 ** 60, 9);
});

test("a missing day ends the run; the index comes back after the warm-up and forgets what was before", () => {
  expect(index([5, 5, 5, null, 1, 1, 1], 0.5, undefined, 3)).toEqual([null, null, 8.75, null, null, null, 1.75]);
  const rows = antecedentPrecipitation(series([5, null, 1]), { decayPerDay: 0.5, warmUpDays: 1, start: 0 });
  expect(rows.map((row) => row.unbrokenDays)).toEqual([1, 0, 1]);
});

test("a known start counts for the first run only", () => {
  expect(index([0, null, 0, 0], 0.5, 8, 2)).toEqual([4, null, null, 0]);
});

test("options that make no sense are refused", () => {
  expect(() => index([1], 1)).toThrow("decay");
  expect(() => index([1], 0)).toThrow("decay");
  expect(() => index([1], 0.9, -1)).toThrow("start");
  expect(() => index([1], 0.9, undefined, 0)).toThrow("warm-up");
});
