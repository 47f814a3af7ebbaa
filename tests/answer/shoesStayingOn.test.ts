import { expect, test } from "vitest";
import { shoesStayingOn } from "../../src/answer/shoesStayingOn.js";
import { dateOfDay } from "../../src/study/dateOfDay.js";
import { dayNumber } from "../../src/study/dayNumber.js";
import type { Study } from "../../src/study/Study.js";
import { footVisit } from "../footVisit.js";
import { gaugeDay, horseStay, studyOf, yard } from "../study.js";

/** Ten horses shod on one day; shoes of the first `lost` are found lost after 30 days, the others are seen on after 50. */
function shod(lost: number, wetOf: (horse: number) => boolean = () => false): Study {
  const names = Array.from({ length: 10 }, (_, i) => `H${i}`);
  const start = dayNumber("2025-01-01")!;
  return studyOf({
    horses: names.map((horseId, i) => horseStay({ horseId, yardId: wetOf(i) ? "Wet" : "Dry", joinedOn: "2024-01-01" })),
    yards: [yard({ yardId: "Wet", gaugeId: "W" }), yard({ yardId: "Dry", gaugeId: "D" })],
    weather: ["W", "D"].flatMap((gaugeId) =>
      Array.from({ length: 60 }, (_, day) =>
        gaugeDay({ gaugeId, date: dateOfDay(start + day), rainMm: gaugeId === "W" ? 5 : 1 }),
      ),
    ),
    visits: names.flatMap((horseId, i) => [
      footVisit({ horseId, foot: "LF", visitDate: dateOfDay(start), workDone: "shoe", shoeState: "tight" }),
      i < lost
        ? footVisit({ horseId, foot: "LF", visitDate: dateOfDay(start + 30), shoeState: "lost" })
        : footVisit({ horseId, foot: "LF", visitDate: dateOfDay(start + 50), shoeState: "tight" }),
    ]),
  });
}

test("six of ten lost by day 30: 40% are still on at six weeks", () => {
  const answer = shoesStayingOn(shod(6));
  expect(answer.kind === "answer" && answer.sentence).toMatch(/^6 of 10 shoes were found lost; at six weeks 40% \(/);
  const [table] = answer.kind === "answer" ? answer.tables : [];
  // 6 x 30 + 4 x 50 days.
  expect(table!.rows).toEqual([{ end: "front", shoes: 10, horses: 10, lost: 6, days: 380 }]);
});

test("without lost shoes enough on each side, wet and dry are not compared", () => {
  const answer = shoesStayingOn(shod(6, (i) => i < 3));
  expect(answer.kind === "answer" && answer.sentence).toContain("Wet and dry weeks cannot be told apart");
});

test("four lost shoes make no curve, nor does an empty study", () => {
  expect(shoesStayingOn(shod(4))).toMatchObject({
    kind: "not_enough_data",
    reason: "4 shoes of 10 seen again were found lost; fewer than 5 make no curve.",
  });
  expect(shoesStayingOn(studyOf())).toMatchObject({
    kind: "not_enough_data",
    reason: expect.stringMatching(/^No horses have/) as string,
  });
});
