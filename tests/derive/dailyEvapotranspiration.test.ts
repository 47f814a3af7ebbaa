import { expect, test } from "vitest";
import { dailyEvapotranspiration } from "../../src/derive/dailyEvapotranspiration.js";
import { gaugeDay } from "../study.js";
import { referenceRain, weatherReferences } from "./weatherReferences.js";

// tests/reference/weather/references.R, with the radiation summed over 20,000 moments of the day.
test("against R: 53.2 degrees north over a year", () => {
  const days = new Map(dailyEvapotranspiration(referenceRain(), 53.2).map((day) => [day.date, day]));
  const expected = [...weatherReferences("evapotranspiration")];
  expect(expected.length).toBeGreaterThan(30);
  for (const [date, mm] of expected) expect(days.get(date)?.evapotranspirationMm, date).toBeCloseTo(mm, 5);
});

test("every calendar day has a row; what is not known is null", () => {
  const rows = dailyEvapotranspiration(
    [
      gaugeDay({ gaugeId: "G", date: "2025-05-04", rainMm: 1.5 }),
      gaugeDay({ gaugeId: "G", date: "2025-05-01", rainMm: 30, flag: "accumulated", tempMinC: 4, tempMaxC: 14 }),
      gaugeDay({ gaugeId: "G", date: "2025-05-03", rainMm: 2, tempMinC: 4 }),
    ],
    53,
  );
  expect(rows.map(({ date, rainMm }) => [date, rainMm])).toEqual([
    ["2025-05-01", null],
    ["2025-05-02", null],
    ["2025-05-03", 2],
    ["2025-05-04", 1.5],
  ]);
  expect(rows.map(({ evapotranspirationMm }) => evapotranspirationMm !== null)).toEqual([true, false, false, false]);
});
