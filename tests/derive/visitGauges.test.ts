import { expect, test } from "vitest";
import { visitGauges } from "../../src/derive/visitGauges.js";
import { defaultSettings } from "../../src/study/defaultSettings.js";
import { footVisit } from "../footVisit.js";
import { gaugeDay, horseStay, studyOf, yard } from "../study.js";

const study = studyOf({
  visits: [
    footVisit({ horseId: "B", visitDate: "2025-03-02" }),
    footVisit({ horseId: "A", visitDate: "2025-03-02", foot: "LH" }),
    footVisit({ horseId: "A", visitDate: "2025-03-02" }),
    footVisit({ horseId: "A", visitDate: "2025-01-10" }),
  ],
  horses: [
    horseStay({ horseId: "A", yardId: "Low", leftOn: "2025-01-31" }),
    horseStay({ horseId: "A", yardId: "High", joinedOn: "2025-02-01" }),
    horseStay({ horseId: "B", yardId: "Mill" }),
  ],
  yards: [
    yard({ yardId: "Low", gaugeId: "G", gaugeKm: 3.5 }),
    yard({ yardId: "High", gaugeId: "H" }),
    yard({ yardId: "Mill", gaugeKm: 2 }),
  ],
  weather: [gaugeDay({ gaugeId: "G", date: "2025-01-01" })],
});

test("one row for each horse and day: yard of that day, its gauge, the distance, the last reading", () => {
  expect(visitGauges(study)).toEqual([
    {
      ...{ horseId: "A", visitDate: "2025-01-10", yardId: "Low", gaugeId: "G", gaugeKm: 3.5, lastRainDay: "2025-01-10" },
      missing: null,
    },
    {
      ...{ horseId: "A", visitDate: "2025-03-02", yardId: "High", gaugeId: "H", gaugeKm: null, lastRainDay: "2025-03-02" },
      missing: { code: "no_readings", text: "gauge H has no readings" },
    },
    {
      ...{ horseId: "B", visitDate: "2025-03-02", yardId: "Mill", gaugeId: null, gaugeKm: 2, lastRainDay: "2025-03-02" },
      missing: { code: "no_gauge", text: "yard Mill has no gauge" },
    },
  ]);
});

test("the last reading follows the hour of the gauge", () => {
  const calendar = { ...study, settings: { ...defaultSettings, gaugeDay: "calendar_day" as const } };
  expect(visitGauges(calendar).map(({ lastRainDay }) => lastRainDay)).toEqual(["2025-01-09", "2025-03-01", "2025-03-01"]);
});

test("a visit without a stay, without a yard or of a yard that is not described says so", () => {
  const odd = (horses: typeof study.horses) => visitGauges({ ...study, horses }).at(-1)?.missing?.code;
  expect(odd([])).toBe("no_stay");
  expect(odd([horseStay({ horseId: "B", yardId: null })])).toBe("no_yard");
  expect(odd([horseStay({ horseId: "B", yardId: "Nowhere" })])).toBe("no_yard");
});
