import { expect, test } from "vitest";
import { rainAfterShoeing } from "../../src/derive/rainAfterShoeing.js";
import type { ShoeLife } from "../../src/derive/shoeLives.js";
import { dateOfDay } from "../../src/study/dateOfDay.js";
import { dayNumber } from "../../src/study/dayNumber.js";
import { gaugeDay, studyOf, yard } from "../study.js";

const life = (yardId: string | null, from: string): ShoeLife => ({
  ...{ horseId: "A", yardId, foot: "LF", end: "fore", from, to: from, days: 0, lost: false, seenOn: from },
});
// Day n of March 2025 has n mm; readings end on their date. Three days after shoeing on the 10th: 11 + 12 + 13 = 36 mm.
const first = dayNumber("2025-03-01")!;
const weather = Array.from({ length: 20 }, (_, place) =>
  gaugeDay({ gaugeId: "G", date: dateOfDay(first + place), rainMm: place + 1 }),
);
const study = studyOf({ weather, yards: [yard({ yardId: "North", gaugeId: "G" }), yard({ yardId: "South" })] });

test("rain of the days after the day of shoeing, however long the shoe stayed on", () => {
  expect(rainAfterShoeing([life("North", "2025-03-10")], study, 3)[0]!.rainMm).toBe(36);
});

test("a window that is not complete, no gauge and no yard give null", () => {
  const lives = [life("North", "2025-03-18"), life("South", "2025-03-10"), life(null, "2025-03-10")];
  expect(rainAfterShoeing(lives, study, 3).map(({ rainMm }) => rainMm)).toEqual([null, null, null]);
});
