import { expect, test } from "vitest";
import { visitsWithoutRain } from "../../../src/answer/fabric/visitsWithoutRain.js";
import { dateOfDay } from "../../../src/study/dateOfDay.js";
import { footVisit } from "../../footVisit.js";
import { gaugeDay, horseStay, studyOf, yard } from "../../study.js";

/** Twenty visits to a horse, one a week from the 29th day of readings on; the readings of some days are gone. */
const herd = (gone: (day: number) => boolean) =>
  studyOf({
    visits: Array.from({ length: 20 }, (_, visit) =>
      footVisit({ visitDate: dateOfDay(20_000 + 29 + 7 * visit), line: visit + 2 }),
    ),
    horses: [horseStay({ horseId: "A", yardId: "Top" })],
    yards: [yard({ yardId: "Top", gaugeId: "G" })],
    weather: Array.from({ length: 200 }, (_, day) => gaugeDay({ gaugeId: "G", date: dateOfDay(20_000 + day), rainMm: 1 })).filter(
      (_, day) => !gone(day),
    ),
  });

test("without gaps nothing is told", () => {
  expect(visitsWithoutRain(herd(() => false))).toEqual([]);
});

test("one lost day takes the 28 days after it from four of twenty visits", () => {
  const [issue] = visitsWithoutRain(herd((day) => day === 100));
  expect(issue?.code).toBe("visits_without_rain");
  expect(issue?.message).toBe(
    "weather.csv, column rain_mm: 4 of 20 visits to horses at yards of gauge G (20 %) have no rain total of 28 days: " +
      "4 have days without a reading before them.",
  );
});

test("a gap behind the first visit's window, or that costs one visit in twenty, is not told", () => {
  expect(visitsWithoutRain(herd((day) => day === 0))).toEqual([]);
  // The last visit is on day 162.
  expect(visitsWithoutRain(herd((day) => day === 161))).toEqual([]);
});
