import { expect, test } from "vitest";
import { unvaryingGrades } from "../../../src/answer/fabric/unvaryingGrades.js";
import { footVisit } from "../../footVisit.js";

/** Horses of one observer, four feet each, so many with a foot at grade 1. */
const graded = (observerId: string, horses: number, withThrush: number) =>
  Array.from({ length: horses }, (_, horse) =>
    (["LF", "RF", "LH", "RH"] as const).map((foot) =>
      footVisit({
        observerId,
        horseId: `${observerId} ${String(horse)}`,
        foot,
        thrushGrade: horse < withThrush && foot === "LH" ? 1 : 0,
      }),
    ),
  ).flat();

test("nothing but 0 on ten horses, where half of another's have thrush, is told", () => {
  const [issue] = unvaryingGrades({ visits: [...graded("A", 10, 0), ...graded("B", 20, 10)] });
  expect([issue?.code, issue?.column]).toEqual(["grades_never_vary", "thrush_grade"]);
  // Half to the tenth: 11 of 22 horses, 1 in 1,024.
  expect(issue?.message).toContain(
    "all 40 thrush grades by A, on 10 horses, are 0, where other observers gave all feet of a horse that grade on 10 of 20 horses; by chance that comes 1 in 1,000 times",
  );
});

test("eight horses are not enough for that: one in 256, and two observers", () => {
  expect(unvaryingGrades({ visits: [...graded("A", 8, 0), ...graded("B", 20, 10)] })).toEqual([]);
  expect(unvaryingGrades({ visits: [...graded("A", 9, 0), ...graded("B", 20, 10)] })).toHaveLength(1);
});

test("many visits to one horse are one horse", () => {
  const often = Array.from({ length: 40 }, (_, at) =>
    footVisit({
      observerId: "A",
      horseId: "A",
      visitDate: `2025-0${String(1 + Math.floor(at / 20))}-${String((at % 20) + 1).padStart(2, "0")}`,
      thrushGrade: 0,
    }),
  );
  expect(unvaryingGrades({ visits: [...often, ...graded("B", 20, 10)] })).toEqual([]);
});

test("where thrush is rare, clear feet throughout are no wonder; nor where there is nobody to compare with", () => {
  expect(unvaryingGrades({ visits: [...graded("A", 10, 0), ...graded("B", 20, 1)] })).toEqual([]);
  expect(unvaryingGrades({ visits: graded("A", 30, 0) })).toEqual([]);
});
