import { expect, test } from "vitest";
import { dampBeforeVisits } from "../../src/derive/dampBeforeVisits.js";
import { dateOfDay } from "../../src/study/dateOfDay.js";
import { dayNumber } from "../../src/study/dayNumber.js";
import { defaultSettings } from "../../src/study/defaultSettings.js";
import type { GaugeDay } from "../../src/study/GaugeDay.js";
import type { GaugeDayRule } from "../../src/study/Settings.js";
import { footVisit } from "../footVisit.js";
import { gaugeDay, horseStay, studyOf, yard } from "../study.js";

const first = dayNumber("2025-08-01")!;
// Dew on every third day from the first, humidity 61, 62, 63 and so on.
const record = Array.from({ length: 20 }, (_, place) =>
  gaugeDay({
    gaugeId: "G",
    date: dateOfDay(first + place),
    tempMinC: 8,
    dewPointC: place % 3 === 0 ? 8 : 7.9,
    humidityPct: 61 + place,
  }),
);
const damp = (weather: readonly GaugeDay[], windowDays?: number, gaugeDayRule: GaugeDayRule = "ends_on_date") =>
  dampBeforeVisits(
    studyOf({
      settings: { ...defaultSettings, gaugeDay: gaugeDayRule },
      visits: [
        footVisit({ visitDate: "2025-08-16" }),
        footVisit({ visitDate: "2025-08-16", foot: "RF" }),
        footVisit({ visitDate: "2025-08-10", horseId: "B" }),
      ],
      horses: [horseStay({ horseId: "A", yardId: "Y" })],
      yards: [yard({ yardId: "Y", gaugeId: "G" })],
      weather,
    }),
    windowDays,
  );

// By hand: 14 days to 16 August are places 2 to 15; dew at 3, 6, 9, 12, 15; mean humidity 61 + 8.5.
test("dewy days and mean humidity of the fortnight", () => {
  const rows = damp(record);
  expect(rows).toHaveLength(2);
  expect(rows[1]).toMatchObject({ horseId: "A", gaugeId: "G", windowDays: 14, dewDays: 5, humidityPct: 69.5 });
  expect(rows[0]).toMatchObject({ horseId: "B", yardId: null, gaugeId: null, dewDays: null, humidityPct: null });
});

test("the window ends on the last admissible day", () => {
  expect(damp(record, 14, "calendar_day")[1]).toMatchObject({ dewDays: 4, humidityPct: 68.5 });
  expect(damp(record, 1)[1]).toMatchObject({ dewDays: 1, humidityPct: 76 });
});

test("a window with a gap is null, never scaled up", () => {
  const without = (cells: Partial<GaugeDay>) => record.map((day, place) => (place === 9 ? { ...day, ...cells } : day));
  expect(damp(without({ dewPointC: null }))[1]).toMatchObject({ dewDays: null, humidityPct: 69.5 });
  expect(damp(without({ humidityPct: null }))[1]).toMatchObject({ dewDays: 5, humidityPct: null });
  expect(damp(record.slice(3))[1]).toMatchObject({ dewDays: null, humidityPct: null });
  expect(damp(record.slice(2))[1]).toMatchObject({ dewDays: 5 });
});

test("a window that is no number of days is refused", () => {
  expect(() => damp(record, 0)).toThrow("makes no sense");
});
