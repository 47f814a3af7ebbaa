import { expect, test } from "vitest";
import { doubleScores } from "../../src/derive/doubleScores.js";
import type { FootVisit } from "../../src/study/FootVisit.js";
import { footVisit } from "../footVisit.js";

const graded = (observerId: string | null, thrushGrade: number | null, cells: Partial<FootVisit> = {}) =>
  footVisit({ observerId, thrushGrade, stage: "before_trim", ...cells });

test("two observers of one foot and day make a pair, whoever wrote first", () => {
  const rows = [graded("M", 2, { stage: "single" }), graded("K", 1)];
  const pair = { firstObserverId: "K", secondObserverId: "M", firstGrade: 1, secondGrade: 2, foot: "LF" };
  expect(doubleScores(rows)).toMatchObject([pair]);
  expect(doubleScores([...rows].reverse())).toEqual(doubleScores(rows));
});

test("another foot, another day, a row after the trim, no grade, no observer: no pair", () => {
  const rows = [
    graded("K", 1),
    graded("M", 2, { foot: "RF" }),
    graded("M", 2, { visitDate: "2025-01-07" }),
    graded("M", 2, { stage: "after_trim" }),
    graded("M", null),
    graded(null, 2),
    graded("K", 3),
  ];
  expect(doubleScores(rows)).toEqual([]);
});

test("three observers make three pairs", () => {
  const pairs = doubleScores([graded("C", 3), graded("A", 1), graded("B", 2)]);
  expect(pairs.map((pair) => [pair.firstObserverId, pair.secondObserverId, pair.firstGrade, pair.secondGrade])).toEqual([
    ["A", "B", 1, 2],
    ["A", "C", 1, 3],
    ["B", "C", 2, 3],
  ]);
});

test("of several grades of one observer the first counts", () => {
  const pairs = doubleScores([graded("K", 1), graded("K", 3, { stage: "single" }), graded("M", 2)]);
  expect(pairs).toMatchObject([{ firstGrade: 1, secondGrade: 2 }]);
});
