import { expect, test } from "vitest";
import { stuckGauges } from "../../../src/answer/fabric/stuckGauges.js";
import { dateOfDay } from "../../../src/study/dateOfDay.js";
import { gaugeDay } from "../../study.js";

const days = (gaugeId: string, rain: readonly (number | null)[]) =>
  rain.map((rainMm, at) => gaugeDay({ gaugeId, date: dateOfDay(20_000 + at), rainMm, line: at + 2 }));
const wet = [5, 0, 4, 6, 0, 3, 5, 0, 4, 6, 0, 7, 2, 0, 1];
const found = (...gauges: ReturnType<typeof days>[]) => stuckGauges({ weather: gauges.flat() }).map(({ message }) => message);

test("nothing in a fortnight while another gauge had a wet week is told", () => {
  expect(found(days("A", Array(15).fill(0)), days("B", wet))).toEqual([
    "weather.csv, line 2, column rain_mm: gauge A reads 0 mm on all 15 days from 2024-10-04 to 2024-10-18, while gauge B had 43 mm on 10 wet days.",
  ]);
});

test("thirteen days, or a little rain elsewhere, or no other gauge, may be a dry spell", () => {
  expect(found(days("A", [...Array<number>(13).fill(0), 2, 0]), days("B", wet))).toEqual([]);
  expect(
    found(
      days("A", Array(15).fill(0)),
      days(
        "B",
        wet.map((mm) => mm / 2),
      ),
    ),
  ).toEqual([]);
  expect(found(days("A", Array(15).fill(0)))).toEqual([]);
});

test("a day without a reading ends the run", () => {
  expect(found(days("A", [...Array<number>(8).fill(0), null, ...Array<number>(6).fill(0)]), days("B", wet))).toEqual([]);
});

test("the very same rain on four days running is told, on three not, nor the smallest step", () => {
  expect(found(days("A", [1, 3.4, 3.4, 3.4, 3.4, 0]))).toEqual([
    "weather.csv, line 3, column rain_mm: gauge A reads 3.4 mm on all 4 days from 2024-10-05 to 2024-10-08.",
  ]);
  expect(found(days("A", [1, 3.4, 3.4, 3.4, 0]))).toEqual([]);
  expect(found(days("A", [0.2, 0.2, 0.2, 0.2, 0.2]))).toEqual([]);
});
