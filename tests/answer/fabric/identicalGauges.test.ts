import { expect, test } from "vitest";
import { identicalGauges } from "../../../src/answer/fabric/identicalGauges.js";
import { dateOfDay } from "../../../src/study/dateOfDay.js";
import { gaugeDay } from "../../study.js";

const days = (gaugeId: string, rain: readonly (number | null)[]) =>
  rain.map((rainMm, at) => gaugeDay({ gaugeId, date: dateOfDay(20_000 + at), rainMm, line: at + 2 }));
const rain = [5, 0, 4.2, 6, 0, 3, 5, 0, 4, 6.8, 0, 7, 2, 0, 1];
const found = (other: readonly (number | null)[]) => identicalGauges({ weather: [...days("A", rain), ...days("B", other)] });

test("one series under two names is told", () => {
  const [issue] = found(rain);
  expect([issue?.code, issue?.message]).toEqual([
    "gauges_identical",
    "weather.csv, line 2, column gauge_id: gauges A and B have the very same rain on 10 of 10 wet days.",
  ]);
  // Nine of ten, as when a day was mended in one of them.
  expect(found(rain.map((mm, at) => (at === 0 ? 9 : mm)))).toHaveLength(1);
});

test("eight of ten alike, or nine wet days in all, are neighbours", () => {
  expect(found(rain.map((mm, at) => (at === 0 || at === 3 ? 9 : mm)))).toEqual([]);
  expect(found(rain.map((mm, at) => (at === 0 ? null : mm)))).toEqual([]);
});
