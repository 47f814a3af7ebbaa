import { expect, test } from "vitest";
import { monthlyRain } from "../../src/derive/monthlyRain.js";
import { dateOfDay } from "../../src/study/dateOfDay.js";
import { dayNumber } from "../../src/study/dayNumber.js";
import { gaugeDay } from "../study.js";
import { seattleRain } from "./seattleRain.js";

test("Seattle 2015 by month: R 4.2.2, sums of the record in vega-datasets", () => {
  const year = monthlyRain(seattleRain()).filter(({ month }) => month.startsWith("2015"));
  const published = [93.0, 134.2, 113.5, 51.6, 14.8, 5.9, 2.3, 83.3, 21.1, 122.4, 212.6, 284.5];
  for (const [place, { rainMm }] of year.entries()) expect(rainMm).toBeCloseTo(published[place]!, 9);
  expect(year).toHaveLength(12);
});

const february = (gaugeId: string, rainMm: number, days = 28) =>
  Array.from({ length: days }, (_, i) => gaugeDay({ gaugeId, date: dateOfDay(dayNumber("2025-02-01")! + i), rainMm }));

test("the mean of two gauges; one that lacks a day is left out, never summed in part", () => {
  expect(monthlyRain([...february("A", 1), ...february("B", 2)])).toEqual([{ month: "2025-02", rainMm: 42, gauges: 2 }]);
  expect(monthlyRain([...february("A", 1), ...february("B", 2, 27)])).toEqual([{ month: "2025-02", rainMm: 28, gauges: 1 }]);
  expect(monthlyRain(february("A", 1, 27))).toEqual([{ month: "2025-02", rainMm: null, gauges: 0 }]);
  expect(monthlyRain([])).toEqual([]);
});
