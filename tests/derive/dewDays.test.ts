import { expect, test } from "vitest";
import { dewDays } from "../../src/derive/dewDays.js";
import { gaugeDay } from "../study.js";

const on = (day: number, cells: object) => gaugeDay({ gaugeId: "G", date: `2025-08-${String(day).padStart(2, "0")}`, ...cells });

test("a day is dewy when the air cooled to its dew point, recorded or worked out", () => {
  const rows = dewDays([
    on(1, { tempMinC: 8, dewPointC: 8 }),
    on(2, { tempMinC: 8.1, dewPointC: 8 }),
    // Mean 12 degrees: at 90 % the dew point is 10.4, at 60 % 4.5 (steam tables, one decimal).
    on(3, { tempMinC: 9, tempMaxC: 15, humidityPct: 90 }),
    on(4, { tempMinC: 9, tempMaxC: 15, humidityPct: 60 }),
    // The recorded dew point counts before the humidity.
    on(5, { tempMinC: 9, tempMaxC: 15, humidityPct: 90, dewPointC: 2 }),
  ]);
  expect(rows.map(({ dew }) => dew)).toEqual([true, false, true, false, false]);
  expect(rows[2]?.dewPointC).toBeCloseTo(10.4, 1);
  expect(rows[3]?.dewPointC).toBeCloseTo(4.5, 1);
});

test("what is not known stays so: days without a row, without the lowest temperature, without a dew point, said twice", () => {
  const rows = dewDays([
    on(1, { tempMinC: 8, dewPointC: 8 }),
    on(3, { dewPointC: 8 }),
    on(4, { tempMinC: 8, humidityPct: 100 }),
    on(5, { tempMinC: 8, tempMaxC: 9 }),
    on(6, { tempMinC: 8, dewPointC: 8 }),
    on(6, { tempMinC: 5, dewPointC: 8 }),
  ]);
  expect(rows.map(({ date, dew }) => [date.slice(8), dew])).toEqual([
    ["01", true],
    ["02", null],
    ["03", null],
    ["04", null],
    ["05", null],
    ["06", null],
  ]);
  expect(rows[2]?.dewPointC).toBe(8);
  expect(dewDays([])).toEqual([]);
});
