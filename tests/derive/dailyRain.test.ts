import { expect, test } from "vitest";
import { dailyRain } from "../../src/derive/dailyRain.js";
import { gaugeDay } from "../study.js";

const day = (date: string, cells: Partial<Parameters<typeof gaugeDay>[0]> = {}) => gaugeDay({ gaugeId: "G", date, ...cells });
const rain = (rows: Parameters<typeof dailyRain>[0]) => dailyRain(rows).map((row) => row.rainMicrometres);

test("every calendar day from first to last, over the clock changes and the leap day", () => {
  const rows = dailyRain([day("2024-11-01", { rainMm: 1 }), day("2024-02-28", { rainMm: 2 })]);
  expect(rows).toHaveLength(248);
  expect(rows.slice(0, 3).map((row) => row.date)).toEqual(["2024-02-28", "2024-02-29", "2024-03-01"]);
  expect(rows.filter((row) => row.rainMicrometres !== null).map((row) => row.date)).toEqual(["2024-02-28", "2024-11-01"]);
});

test("no value is no rain reading; a trace is 0; a value flagged as missing or accumulated is not used", () => {
  expect(
    rain([
      day("2025-01-01", { rainMm: 0 }),
      day("2025-01-02"),
      day("2025-01-03", { flag: "trace" }),
      day("2025-01-04", { rainMm: 0.254 }),
      day("2025-01-05", { rainMm: 12, flag: "missing" }),
      day("2025-01-06", { rainMm: 30, flag: "accumulated" }),
    ]),
  ).toEqual([0, null, 0, 254, null, null]);
});

test("only the day of an accumulated reading is marked", () => {
  const rows = dailyRain([day("2025-01-01", { rainMm: 1 }), day("2025-01-03", { rainMm: 30, flag: "accumulated" })]);
  expect(rows.map((row) => row.accumulated)).toEqual([false, false, true]);
});

test("two rows of one day count once when they agree and not at all when they differ", () => {
  expect(rain([day("2025-01-01", { rainMm: 3 }), day("2025-01-01", { rainMm: 3 })])).toEqual([3000]);
  expect(rain([day("2025-01-01", { rainMm: 3 }), day("2025-01-01", { rainMm: 4 })])).toEqual([null]);
  expect(rain([day("2025-01-01", { rainMm: 3 }), day("2025-01-01")])).toEqual([null]);
});

test("no rows, and rows of two gauges", () => {
  expect(dailyRain([])).toEqual([]);
  expect(() => dailyRain([day("2025-01-01"), gaugeDay({ gaugeId: "H", date: "2025-01-01" })])).toThrow("gauge G and of gauge H");
});
