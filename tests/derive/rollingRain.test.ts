import fc from "fast-check";
import { expect, test } from "vitest";
import { rollingRain } from "../../src/derive/rollingRain.js";
import { dateOfDay } from "../../src/study/dateOfDay.js";
import { gaugeDay } from "../study.js";
import { seattleRain } from "./seattleRain.js";

const seattleDays = seattleRain();

const maximum = (windowDays: number) => {
  const totals = rollingRain(seattleDays, windowDays).filter((row) => row.rainMm !== null);
  return totals.reduce((most, row) => (row.rainMm! > most.rainMm! ? row : most));
};

// Seattle totals: R package climdex.pcic 1.2-0 (5-day maxima) and an independent Python sum of the file in integer tenths of a millimetre.
// Sums are exact, so they are compared without a tolerance.
test("Seattle: greatest totals and the day they end on", () => {
  expect(maximum(7)).toMatchObject({ date: "2015-11-17", rainMm: 146 });
  expect(maximum(14)).toMatchObject({ date: "2015-12-18", rainMm: 194.3 });
  expect(maximum(30)).toMatchObject({ date: "2015-12-12", rainMm: 325.7 });
});

test.each([
  [2012, 54.1, 101.1, "2012-11-23"],
  [2013, 43.4, 91.9, "2013-10-02"],
  [2014, 46.7, 98.5, "2014-03-08"],
  [2015, 55.9, 134.6, "2015-11-17"],
])("Seattle %i: greatest 1-day and 5-day rain (climdex.pcic RX1day, RX5day)", (year, oneDay, fiveDays, lastDay) => {
  const ofYear = (windowDays: number) => rollingRain(seattleDays, windowDays).filter((row) => row.date.startsWith(`${year}`));
  const most = (windowDays: number) => Math.max(...ofYear(windowDays).flatMap(({ rainMm }) => rainMm ?? []));
  expect(most(1)).toBe(oneDay);
  expect(most(5)).toBe(fiveDays);
  expect(ofYear(5).find(({ rainMm }) => rainMm === fiveDays)?.date).toBe(lastDay);
});

test("Seattle: totals of the last day, of each year and of the months of 2015", () => {
  const on = (date: string, windowDays: number) => rollingRain(seattleDays, windowDays).find((row) => row.date === date)?.rainMm;
  expect([7, 14, 30].map((windowDays) => on("2015-12-31", windowDays))).toEqual([15.9, 79.3, 272.3]);
  expect([on("2012-12-31", 366), on("2013-12-31", 365), on("2014-12-31", 365), on("2015-12-31", 365)]).toEqual([
    1226, 828, 1232.8, 1139.2,
  ]);
  const lengths = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
  const months = lengths.map((days, month) => on(`2015-${String(month + 1).padStart(2, "0")}-${days}`, days));
  expect(months).toEqual([93, 134.2, 113.5, 51.6, 14.8, 5.9, 2.3, 83.3, 21.1, 122.4, 212.6, 284.5]);
});

test("a day without a reading empties exactly the windows it lies in, and so does the start of the record", () => {
  const days = [1, 2, null, 4, 5, 6].map((rainMm, place) => gaugeDay({ gaugeId: "G", date: `2025-01-0${place + 1}`, rainMm }));
  const rows = rollingRain(days, 2);
  expect(rows.map((row) => row.rainMm)).toEqual([null, 3, null, null, 9, 11]);
  expect(rows.map((row) => row.daysMissing)).toEqual([1, 0, 1, 1, 0, 0]);
});

test("a total of several days is in no window", () => {
  const days = [
    gaugeDay({ gaugeId: "G", date: "2025-01-01", rainMm: 1 }),
    gaugeDay({ gaugeId: "G", date: "2025-01-04", rainMm: 30, flag: "accumulated" }),
    gaugeDay({ gaugeId: "G", date: "2025-01-05", rainMm: 2 }),
    gaugeDay({ gaugeId: "G", date: "2025-01-06", rainMm: 3 }),
  ];
  const rows = rollingRain(days, 2);
  expect(rows.map((row) => row.rainMm)).toEqual([null, null, null, null, null, 5]);
  expect(rows.map((row) => row.accumulated)).toEqual([false, false, false, true, true, false]);
});

test("the moving sum is the plain sum of its days", () => {
  const readings = fc.array(fc.option(fc.integer({ min: 0, max: 3000 }), { nil: null }), { minLength: 1, maxLength: 60 });
  fc.assert(
    fc.property(readings, fc.integer({ min: 1, max: 20 }), (tenths, windowDays) => {
      const days = tenths.map((value, place) =>
        gaugeDay({ gaugeId: "G", date: dateOfDay(20_000 + place), rainMm: value === null ? null : value / 10 }),
      );
      rollingRain(days, windowDays).forEach((row, place) => {
        const window = place + 1 < windowDays ? [null] : tenths.slice(place + 1 - windowDays, place + 1);
        const plain = window.includes(null) ? null : window.reduce<number>((sum, value) => sum + value!, 0) / 10;
        expect(row.rainMm).toBe(plain);
      });
    }),
  );
});

test("a window that is no number of days is refused", () => {
  for (const windowDays of [0, -7, 2.5, Number.NaN]) expect(() => rollingRain([], windowDays)).toThrow("cannot be summed");
});
