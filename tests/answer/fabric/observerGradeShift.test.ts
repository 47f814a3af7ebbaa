import { expect, test } from "vitest";
import { observerGradeShift } from "../../../src/answer/fabric/observerGradeShift.js";
import { footVisit } from "../../footVisit.js";
import { horseStay, studyOf } from "../../study.js";

/** Forty horses of a yard, all seen by A and by B in one quarter; B finds thrush on the first `found` of them, A on the first ten. */
const herd = (found: number, yardOf: (observerId: string) => string = () => "Top") => {
  const visits = ["A", "B"].flatMap((observerId) =>
    Array.from({ length: 40 }, (_, horse) =>
      footVisit({
        horseId: `${yardOf(observerId)} ${String(horse)}`,
        observerId,
        visitDate: observerId === "A" ? "2025-01-06" : "2025-02-17",
        thrushGrade: horse < (observerId === "A" ? 10 : found) ? 1 : 0,
        line: horse + 2,
      }),
    ),
  );
  const names = new Set(visits.map(({ horseId }) => horseId));
  const horses = [...names].map((horseId) => horseStay({ horseId, yardId: horseId.split(" ")[0] ?? "" }));
  return studyOf({ visits, horses });
};

test("an observer who finds thrush on 35 of the same 40 horses, where another finds 10, sees otherwise", () => {
  const [issue, ...more] = observerGradeShift(herd(35));
  expect(more).toEqual([]);
  expect([issue?.code, issue?.column]).toEqual(["grades_shift_with_observer", "observer_id"]);
  // Odds 35/5 over 10/30 are 21.
  expect(issue?.message).toContain("was found at 35 of 40 visits by B and at 10 of 40 by A: odds ratio 21.00 (99.8 % interval");
});

test("17 of 40 is a shift that an analysis allows for, and no doubt of the records", () => {
  expect(observerGradeShift(herd(17))).toEqual([]);
  expect(observerGradeShift(herd(10))).toEqual([]);
});

test("where each observer has a yard, the eye and the yard cannot be told apart", () => {
  expect(observerGradeShift(herd(35, (observerId) => `Yard-${observerId}`))).toEqual([]);
});
