import { expect, test } from "vitest";
import { toeByTheDate } from "../../src/answer/toeByTheDate.js";
import { footVisit } from "../footVisit.js";
import { horseStay, studyOf } from "../study.js";

const horses = [horseStay({ horseId: "A", plannedIntervalDays: 42 })];
const visits = [
  footVisit({ visitDate: "2025-03-03", stage: "after_trim", toeLengthMm: 80, workDone: "trim" }),
  footVisit({ visitDate: "2025-03-03", foot: "RF", stage: "before_trim", toeLengthMm: 90, workDone: "trim" }),
];

test("six weeks at the published range are 8 to 13 mm, on top of the toe after the trim", () => {
  const answer = toeByTheDate(studyOf({ visits, horses }));
  if (answer.kind !== "answer") throw new Error(answer.reason);
  // 42 x 0.202 = 8.48 and 42 x 0.31 = 13.02, the 13 mm in 6 weeks of Kolstrung R et al. 2012, Med Weter 68:426.
  expect(answer.sentence).toBe(
    "By their planned dates (42 days) the walls of 2 feet may have grown 8 to 13 mm, at 0.20 to 0.31 mm a day (published range).",
  );
  const [first, second] = answer.tables[0]!.rows;
  expect(first).toMatchObject({ foot: "near fore", dueOn: "14 Apr 2025", toeAfterTrimMm: 80 });
  expect([first!["toeFromMm"], first!["toeToMm"]].map(Number)).toEqual([expect.closeTo(88.484, 9), expect.closeTo(93.02, 9)]);
  expect(second).toMatchObject({ foot: "off fore", toeAfterTrimMm: null, toeFromMm: null });
  expect(answer.method.missing).toBe(1);
  expect(answer.cautions[0]).toMatch(/^This is no advice to change an interval/);
});

test("without a plan there is no date", () => {
  expect(toeByTheDate(studyOf({ visits, horses: [horseStay({ horseId: "A" })] }))).toMatchObject({ kind: "not_enough_data" });
});
