import { expect, test } from "vitest";
import { shapeRepeated } from "../../src/answer/shapeRepeated.js";
import type { FootVisit } from "../../src/study/FootVisit.js";
import { footVisit } from "../footVisit.js";
import { studyOf } from "../study.js";

// Two observers, K reads 1 degree more or less than M by turns: within-foot variance 0.5, so an error of sqrt(0.5) degrees.
const visits = Array.from({ length: 12 }, (_, k): FootVisit[] => {
  const cells = { horseId: `h${k}`, visitDate: "2025-03-03" };
  const toeAngleDeg = 48 + k / 2;
  return [
    footVisit({ ...cells, stage: "before_trim", observerId: "K", toeAngleDeg: toeAngleDeg + (k % 2 === 0 ? 1 : -1) }),
    footVisit({ ...cells, stage: "single", observerId: "M", toeAngleDeg }),
  ];
}).flat();

test("smallest detectable change by hand, with the definition of what was measured", () => {
  const answer = shapeRepeated(studyOf({ visits }));
  if (answer.kind !== "answer") throw new Error(answer.reason);
  // 1.96 x sqrt 2 x sqrt 0.5 = 1.96.
  expect(answer.sentence).toBe(
    "From 12 feet measured by two observers, a change between two readings is more than reading error (95%) from 2.0 degrees in toe angle.",
  );
  expect(answer.tables[0]!.rows).toMatchObject([{ title: "Toe angle", unit: "deg", feet: 12, bias: 0 }]);
  expect(Number(answer.tables[0]!.rows[0]!["sem"])).toBeCloseTo(Math.sqrt(0.5), 12);
  expect(answer.tables.at(-1)!.rows).toEqual([
    { title: "Toe angle", unit: "deg", definition: "toe wall to ground plane", source: "common practice, no source" },
  ]);
});

test("few feet measured twice tell no error, and the words say what to do", () => {
  expect(shapeRepeated(studyOf({ visits: visits.slice(0, 8) }))).toMatchObject({
    kind: "not_enough_data",
    reason: expect.stringMatching(/^4 feet were measured by two observers.*Let two people measure the same feet/) as string,
  });
  expect(shapeRepeated(studyOf())).toMatchObject({ kind: "not_enough_data" });
});
