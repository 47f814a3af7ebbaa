import { expect, test } from "vitest";
import { growthOfTheWall } from "../../src/answer/growthOfTheWall.js";
import type { FootVisit } from "../../src/study/FootVisit.js";
import { footVisit } from "../footVisit.js";
import { studyOf } from "../study.js";

// Six horses with a ring that grew 0.25 mm a day but for a reading error by turns; toes that shrink must not matter.
const visits = Array.from({ length: 6 }, (_, k): FootVisit[] =>
  ["2025-01-06", "2025-02-15", "2025-03-27", "2025-05-06"].map((visitDate, turn) =>
    footVisit({
      ...{ horseId: `h${k}`, visitDate, markKind: "ring", stage: "before_trim", toeLengthMm: 90 - 5 * turn },
      markBelowCoronetMm: 10 + 10 * turn + (turn % 2 === 0 ? 0.4 : -0.4) * (k % 2 === 0 ? 1 : -1) + (k * turn) / 5,
    }),
  ),
).flat();

test("mean of the herd from marks alone, with the range for a horse that was not followed", () => {
  const answer = growthOfTheWall(studyOf({ visits }));
  if (answer.kind !== "answer") throw new Error(answer.reason);
  // Means of the horses: (30 + 3 k / 5 -+ 0.8) / 120 mm a day; over k = 0 .. 5 that is (30 + 1.5) / 120 = 0.2625.
  expect(answer.sentence).toMatch(
    /^Walls grew 0\.26[23] mm a day on average over 6 horses \(95% interval 0\.2\d\d to 0\.2\d\d\), 8\.0 mm a month;/,
  );
  expect(answer.method).toMatchObject({ n: 18, missing: 0 });
  expect(answer.tables.map(({ rows }) => rows.length)).toEqual([2, 0, 6, 3]);
});

test("a herd without marks is told the published range and what to measure", () => {
  expect(growthOfTheWall(studyOf({ visits: visits.slice(0, 8) }))).toMatchObject({
    kind: "not_enough_data",
    reason:
      "Marks were followed in 2 horses; 5 are needed. Until then the published range of 0.20 to 0.31 mm a day stands in: measure the same ring or track below the hairline at two visits.",
  });
});
