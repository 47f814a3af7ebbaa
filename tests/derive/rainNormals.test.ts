import { expect, test } from "vitest";
import { rainNormals } from "../../src/derive/rainNormals.js";
import { dateOfDay } from "../../src/study/dateOfDay.js";
import { dayNumber } from "../../src/study/dayNumber.js";
import { referenceRain, weatherReferences } from "./weatherReferences.js";

// tests/reference/weather/references.R: filter and tapply of base R.
test.each([7, 28])("against R, windows of %i days", (windowDays) => {
  const normals = rainNormals(referenceRain(), windowDays);
  const [mm, years] = [weatherReferences(`normal${windowDays}/mm`), weatherReferences(`normal${windowDays}/years`)];
  expect(normals.map(({ month }) => month)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
  for (const { month, normalMm, years: found } of normals) {
    expect(normalMm).toBeCloseTo(mm.get(String(month))!, 9);
    expect(found).toBe(years.get(String(month)));
  }
});

const steady = (from: string, days: number, rainMm: number) =>
  Array.from({ length: days }, (_, place) => ({ date: dateOfDay(dayNumber(from)! + place), rainMm }));

test("every year has the same weight, and a year with fewer than 20 days of a month none", () => {
  const may = (year: number, days: number, rainMm: number) => steady(`${year}-05-01`, days, rainMm);
  const ofMay = (days: readonly { date: string; rainMm: number }[]) => rainNormals(days, 1)[4];
  expect(ofMay([...may(2021, 31, 2), ...may(2022, 20, 5)])).toEqual({ month: 5, normalMm: 3.5, years: 2 });
  expect(ofMay([...may(2021, 31, 2), ...may(2022, 19, 5)])).toEqual({ month: 5, normalMm: null, years: 1 });
});

test("14 months have a normal of the two months that come twice only, unless one year is said to be enough", () => {
  const days = steady("2024-01-01", 31 + 365 + 30, 1.5);
  const normals = rainNormals(days, 7);
  expect(normals.map(({ years }) => years)).toEqual([2, 2, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1]);
  expect(normals.map(({ normalMm }) => normalMm)).toEqual([10.5, 10.5, ...Array<null>(10).fill(null)]);
  expect(rainNormals(days, 7, { minimumYears: 1 }).every(({ normalMm }) => normalMm === 10.5)).toBe(true);
  expect(rainNormals([], 7).every(({ normalMm, years }) => normalMm === null && years === 0)).toBe(true);
});

test("choices that make no sense are refused", () => {
  expect(() => rainNormals([], 0)).toThrow("window");
  for (const minimumYears of [0, 1.5, Number.NaN]) expect(() => rainNormals([], 7, { minimumYears })).toThrow("years");
});
