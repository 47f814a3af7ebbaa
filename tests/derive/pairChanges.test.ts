import { expect, test } from "vitest";
import { pairChanges } from "../../src/derive/pairChanges.js";
import { unevenPairs } from "../../src/derive/unevenPairs.js";
import { footVisit } from "../footVisit.js";
import { studyOf } from "../study.js";

const pair = (visitDate: string, left: number | null, right: number | null) =>
  (
    [
      ["LF", left],
      ["RF", right],
    ] as const
  ).map(([foot, toeAngleDeg]) => footVisit({ visitDate, foot, toeAngleDeg, stage: "before_trim" }));
const changes = (visits: ReturnType<typeof pair>[], minimumDetectableAngleDeg?: number) =>
  pairChanges(
    unevenPairs(studyOf({ visits: visits.flat() })),
    minimumDetectableAngleDeg === undefined ? {} : { minimumDetectableAngleDeg },
  );

test("how far a pair has drifted apart", () => {
  expect(changes([pair("2025-06-30", 50, 55), pair("2025-01-06", 51, 52), pair("2025-03-03", 51, null)])).toEqual([
    {
      ...{ horseId: "A", end: "fore", stage: "before_trim", from: "2025-01-06", to: "2025-06-30", days: 175, times: 2 },
      ...{ firstDeg: -1, lastDeg: -5, driftDeg: 4, minimumDetectableDeg: null, detectable: null },
    },
  ]);
});

test("a pair that changes over moves far and drifts little", () => {
  expect(changes([pair("2025-01-06", 53, 50), pair("2025-06-30", 50, 53)], 2)[0]).toMatchObject({
    ...{ firstDeg: 3, lastDeg: -3, driftDeg: 0, detectable: true },
  });
});

// Two differences carry four readings, so twice the variance of one difference of two readings.
test("the bar is the square root of two higher than for one foot", () => {
  const of = (least: number) => changes([pair("2025-01-06", 50, 50), pair("2025-06-30", 53, 50)], least)[0]!;
  expect(of(2.1).minimumDetectableDeg).toBeCloseTo(2.1 * Math.SQRT2, 12);
  expect([of(2.1).detectable, of(2.2).detectable]).toEqual([true, false]);
});

test("one day is no change", () => {
  expect(changes([pair("2025-01-06", 50, 50), pair("2025-06-30", 50, null)])).toEqual([]);
});

test("stages have changes of their own", () => {
  const after = pair("2025-06-30", 50, 55).map((visit) => ({ ...visit, stage: "after_trim" as const }));
  expect(changes([pair("2025-01-06", 51, 52), after])).toEqual([]);
  const both = changes([pair("2025-01-06", 51, 52), after, pair("2025-06-30", 51, 53)]);
  expect(both).toMatchObject([{ stage: "before_trim", firstDeg: -1, lastDeg: -2, times: 2 }]);
});
