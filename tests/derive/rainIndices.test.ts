import fc from "fast-check";
import { expect, test } from "vitest";
import { rainIndices, type RainIndices, type RainIndicesOptions } from "../../src/derive/rainIndices.js";
import { dateOfDay } from "../../src/study/dateOfDay.js";
import { dayNumber } from "../../src/study/dayNumber.js";
import { seattleRain } from "./seattleRain.js";
import { referenceRain, weatherReferences } from "./weatherReferences.js";

const seattle = seattleRain();

// Seattle 2012-2015: R package climdex.pcic 1.2-0 (climdexInput.raw, climdex.prcptot, .sdii, .cdd, .cwd, .r10mm, .r20mm, .rx1day, .rx5day), and independent Python
// code. No spell there crosses the end of a year, so both rules for spells must agree. Sums are exact; SDII was kept to ten decimals.
test.each([
  [2012, 366, 1211.5, 148, 8.1858108108, 81, 14, 42, 11, 54.1, 101.1],
  [2013, 365, 813.6, 119, 6.8369747899, 35, 9, 21, 8, 43.4, 91.9],
  [2014, 365, 1220.1, 123, 9.9195121951, 24, 15, 47, 14, 46.7, 98.5],
  [2015, 365, 1126.2, 116, 9.7086206897, 54, 13, 34, 18, 55.9, 134.6],
])("Seattle %i", (year, days, prcptotMm, wetDays, sdii, cddDays, cwdDays, r10mmDays, r20mmDays, rx1dayMm, rx5dayMm) => {
  for (const spells of ["year-end", "within-year"] as const) {
    const { sdiiMm, ...found } = rainIndices(seattle, { year, spells });
    const counts = { prcptotMm, wetDays, cddDays, cwdDays, r10mmDays, r20mmDays, rx1dayMm, rx5dayMm };
    expect(found).toEqual({ year, month: null, days, missingDays: 0, ...counts });
    expect(sdiiMm).toBeCloseTo(sdii, 9);
  }
});

// The same source, PRCPTOT and R1mm of the months of 2015.
test("Seattle, the months of 2015", () => {
  const months = Array.from({ length: 12 }, (_, month) => rainIndices(seattle, { year: 2015, month: month + 1 }));
  expect(months.map(({ prcptotMm }) => prcptotMm)).toEqual([90.1, 132.8, 111.9, 50.8, 14.5, 4.6, 2, 82.8, 20, 121.5, 211, 284.2]);
  expect(months.map(({ wetDays }) => wetDays)).toEqual([9, 14, 14, 11, 3, 1, 1, 5, 6, 11, 17, 24]);
  expect(months.map(({ days }) => days)).toEqual([31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]);
});

// tests/reference/weather/references.R: base R, on an invented record with gaps, a dry spell over the end of 2020 and a wet one over that of 2022.
const record = referenceRain();
const fields = [
  "missingDays",
  "prcptotMm",
  "wetDays",
  "r10mmDays",
  "r20mmDays",
  "rx1dayMm",
  "rx5dayMm",
  "cddDays",
  "cwdDays",
] as const;

test.each([...weatherReferences("year/wetDays").keys()])("against R, %s", (year) => {
  heldTo("year", year, { year: Number(year) });
});

test.each([...weatherReferences("month/wetDays").keys()])("against R, %s", (key) => {
  heldTo("month", key, { year: Number(key.slice(0, 4)), month: Number(key.slice(5)) });
});

function heldTo(kind: string, key: string, options: RainIndicesOptions): void {
  const expected = (name: string) => weatherReferences(`${kind}/${name}`).get(key)!;
  const found = rainIndices(record, options);
  // R sums doubles, so its totals carry some 1e-13 of rounding.
  for (const name of fields) expect(found[name], name).toBeCloseTo(expected(name), 9);
  expect(found.sdiiMm).toBeCloseTo(expected("sdiiMm"), 9);
  const within = rainIndices(record, { ...options, spells: "within-year" });
  expect([within.cddDays, within.cwdDays]).toEqual([expected("cddDaysWithin"), expected("cwdDaysWithin")]);
}

const dry = (from: string, days: number) =>
  Array.from({ length: days }, (_, place) => ({ date: dateOfDay(dayNumber(from)! + place), rainMm: 0 }));

test("a spell over the end of a year counts where it ends, or is cut off", () => {
  // 2020-12-22 to 2021-01-20 without rain: 10 days before the end of the year and 20 after it.
  const days = [...dry("2020-01-01", 366 + 20), { date: "2021-01-21", rainMm: 5 }, ...dry("2021-01-22", 344)].map((day) =>
    day.date === "2020-12-21" ? { ...day, rainMm: 5 } : day,
  );
  const cdd = (options: RainIndicesOptions) => rainIndices(days, options).cddDays;
  expect([cdd({ year: 2021, month: 1 }), cdd({ year: 2020, month: 12 })]).toEqual([30, 355]);
  expect([cdd({ year: 2021, month: 1, spells: "within-year" }), cdd({ year: 2020, month: 12, spells: "within-year" })]).toEqual([
    20, 20,
  ]);
});

test("a year that one spell fills and leaves has no longest dry spell of its own; a year without an end of a spell has 0", () => {
  const days = dry("2020-01-01", 366 + 365 + 10);
  expect(rainIndices(days, { year: 2020 })).toMatchObject({ cddDays: null, cwdDays: 0, prcptotMm: 0, wetDays: 0, sdiiMm: null });
  expect(rainIndices(days, { year: 2021, spells: "within-year" }).cddDays).toBe(365);
  const rainsOnce = days.map((day) => (day.date === "2020-06-01" ? { ...day, rainMm: 3 } : day));
  expect(rainIndices(rainsOnce, { year: 2020, month: 6 }).cddDays).toBe(0);
  expect(rainIndices(rainsOnce, { year: 2020, month: 6, spells: "within-year" }).cddDays).toBe(29);
});

test("too many missing days withhold every index; the days outside the record are missing", () => {
  const days = dry("2020-01-01", 366).map((day, place) => (place >= 100 && place < 115 ? { ...day, rainMm: null } : day));
  expect(rainIndices(days, { year: 2020 })).toMatchObject({ missingDays: 15, wetDays: 0, cddDays: 251 });
  const one = days.map((day, place) => (place === 115 ? { ...day, rainMm: null } : day));
  const withheld: Partial<RainIndices> = {
    missingDays: 16,
    prcptotMm: null,
    wetDays: null,
    cddDays: null,
    cwdDays: null,
    rx1dayMm: null,
    rx5dayMm: null,
  };
  expect(rainIndices(one, { year: 2020 })).toMatchObject({ ...withheld, sdiiMm: null, r10mmDays: null, r20mmDays: null });
  expect(rainIndices(one, { year: 2020, missingDaysAllowed: 16 })).toMatchObject({ missingDays: 16, wetDays: 0 });
  expect(rainIndices(days, { year: 2019 })).toMatchObject({ missingDays: 365, wetDays: null });
  expect(rainIndices([], { year: 2020 })).toMatchObject({ missingDays: 366, wetDays: null });
  expect(rainIndices(days.slice(0, 28), { year: 2020, month: 1 })).toMatchObject({ missingDays: 3, wetDays: 0 });
  expect(rainIndices(days.slice(0, 27), { year: 2020, month: 1 })).toMatchObject({ missingDays: 4, wetDays: null });
});

test("1 mm is wet and 0.9 dry; 10 and 20 mm count; tenths do not drift", () => {
  const wet = dry("2021-01-01", 365).map((day, place) => ({ ...day, rainMm: [0.9, 1, 10, 20][place] ?? 0 }));
  expect(rainIndices(wet, { year: 2021 })).toMatchObject({
    wetDays: 3,
    prcptotMm: 31,
    r10mmDays: 2,
    r20mmDays: 1,
    rx5dayMm: 31.9,
  });
  const tenths = dry("2021-01-01", 365).map((day) => ({ ...day, rainMm: 1.1 }));
  expect(rainIndices(tenths, { year: 2021 }).prcptotMm).toBe(401.5);
});

test("a total of several days is a missing day", () => {
  const days = dry("2021-01-01", 31).map((day, place) => ({
    ...day,
    flag: place === 9 ? ("accumulated" as const) : null,
    rainMm: 4,
  }));
  expect(rainIndices(days, { year: 2021, month: 1 })).toMatchObject({ missingDays: 1, wetDays: 30, cwdDays: 21, rx5dayMm: 20 });
});

// 2001 and 2029 begin on the same day of the week and have no leap day; what counts is that the days keep their places.
test("order of the rows and a shift to another year of the same length change nothing", () => {
  const readings = fc.array(fc.option(fc.integer({ min: 0, max: 400 }), { nil: null, freq: 40 }), {
    minLength: 365,
    maxLength: 365,
  });
  fc.assert(
    fc.property(readings, fc.constantFrom("year-end" as const, "within-year" as const), (tenths, spells) => {
      const days = (year: number) =>
        tenths.map((value, place) => ({
          date: dateOfDay(dayNumber(`${year}-01-01`)! + place),
          rainMm: value === null ? null : value / 10,
        }));
      const found = rainIndices(days(2001), { year: 2001, spells });
      expect(rainIndices(days(2001).reverse(), { year: 2001, spells })).toEqual(found);
      expect({ ...rainIndices(days(2029), { year: 2029, spells }), year: 2001 }).toEqual(found);
      // Days around the year do not matter when it is cut off at both ends, but for the five days that reach back.
      const around = [...days(2001), { date: "2000-12-31", rainMm: null }, { date: "2002-01-01", rainMm: 7 }];
      expect(rainIndices(around, { year: 2001, spells: "within-year" })).toEqual(
        rainIndices(days(2001), { year: 2001, spells: "within-year" }),
      );
      if (found.wetDays === null) return;
      const dryDays = tenths.filter((value) => value !== null && value < 10).length;
      expect(found.wetDays + dryDays + found.missingDays).toBe(365);
      expect(found.cwdDays).toBeLessThanOrEqual(found.wetDays);
      expect(found.cddDays).toBeLessThanOrEqual(dryDays);
      expect(found.rx1dayMm).toBeLessThanOrEqual(Math.max(...tenths.map((value) => value ?? 0)) / 10);
    }),
    { numRuns: 40 },
  );
});

test("a year without rain added changes nothing of the year before it", () => {
  const wetDecember = dry("2021-01-01", 365).map((day) => (day.date === "2021-12-31" ? { ...day, rainMm: 9 } : day));
  expect(rainIndices([...wetDecember, ...dry("2022-01-01", 365)], { year: 2021 })).toEqual(
    rainIndices(wetDecember, { year: 2021 }),
  );
});

test("choices that make no sense are refused", () => {
  const odd = (options: object) => () => rainIndices([], { year: 2020, ...options });
  expect(odd({ year: 20.5 })).toThrow("year");
  expect(odd({ month: 13 })).toThrow("month");
  expect(odd({ spells: "never" })).toThrow("rule");
  expect(odd({ missingDaysAllowed: -1 })).toThrow("missing days");
  expect(() => rainIndices([{ date: "2020-01-01", rainMm: -1 }], { year: 2020 })).toThrow("-1 mm");
  expect(() => rainIndices([{ date: "2020-01-01", rainMm: Number.NaN }], { year: 2020 })).toThrow("NaN mm");
});
