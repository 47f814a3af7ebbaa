import { expect, test } from "vitest";
import { marksOnTheWall } from "../../src/answer/marksOnTheWall.js";
import { footVisit } from "../footVisit.js";
import { studyOf } from "../study.js";

test("without growth of its own the published range: 25 mm are 81 to 124 days, to the ground by what is left", () => {
  const visits = [
    footVisit({
      visitDate: "2025-06-02",
      markKind: "abscess_track",
      markBelowCoronetMm: 25,
      stage: "after_trim",
      toeLengthMm: 87,
    }),
    footVisit({ visitDate: "2025-06-02", foot: "RF", markKind: "ring", markBelowCoronetMm: null }),
    footVisit({ visitDate: "2025-06-02", foot: "LH", markKind: "crack", markBelowCoronetMm: 10 }),
  ];
  const answer = marksOnTheWall(studyOf({ visits }));
  if (answer.kind !== "answer") throw new Error(answer.reason);
  // 25 / 0.31 = 80.6 and 25 / 0.202 = 123.8 days before 2 June 2025; 62 mm left: 200 and 306.9 days on.
  expect(answer.sentence).toBe(
    "1 mark on the walls of 1 horse, each with the days between which it began. Seen last: A, near fore, abscess track 25 mm below the hairline on 2 June 2025; it began between 29 January 2025 and 13 March 2025.",
  );
  expect(answer.tables[0]!.rows).toMatchObject([
    {
      beganEarliest: "29 Jan 2025",
      beganLatest: "13 Mar 2025",
      groundEarliest: "19 Dec 2025",
      groundLatest: "5 Apr 2026",
      rate: "0.20 to 0.31",
      ratesFrom: "published studies",
    },
  ]);
  expect(answer.tables[1]!.rows.map(({ source }) => source)).toHaveLength(3);
  expect(answer.method.missing).toBe(1);
  expect(answer.charts[0]!.title).toBe("Marks travelling down the wall: A");
});

test("no mark, no day", () => {
  expect(marksOnTheWall(studyOf({ visits: [footVisit()] }))).toMatchObject({ kind: "not_enough_data" });
});
