import { expect, test } from "vitest";
import { frontAndHind } from "../../src/answer/frontAndHind.js";
import type { FootVisit } from "../../src/study/FootVisit.js";
import { footVisit } from "../footVisit.js";
import { horseStay, studyOf } from "../study.js";

// Width and length in mm. By hand, fore less hind: A 1.10 - 1.00 = 0.10, B 0.08, C 0.06, D 0.12, E -0.01; mean 0.07.
const shapes: Record<string, readonly [fore: number, hind: number]> = {
  A: [110, 100],
  B: [108, 100],
  C: [106, 100],
  D: [112, 100],
  E: [99, 100],
};
const visits = Object.entries(shapes).flatMap(([horseId, [fore, hind]]): FootVisit[] => [
  footVisit({ horseId, foot: "LF", stage: "after_trim", hoofWidthMm: fore, hoofLengthMm: 100 }),
  footVisit({ horseId, foot: "LH", stage: "after_trim", hoofWidthMm: hind, hoofLengthMm: 100 }),
  // Before trimming the hind foot is longer; it must not enter.
  footVisit({ horseId, foot: "LH", stage: "before_trim", hoofWidthMm: hind, hoofLengthMm: 140 }),
]);

test("the paired difference within horses, one stage only", () => {
  const answer = frontAndHind(studyOf({ visits }));
  // R 4.2.2: t.test(c(.10, .08, .06, .12, -.01)) gives mean 0.07 and limits 0.0079168 and 0.1320832.
  expect(answer).toMatchObject({
    sentence:
      "In 4 of 5 horses the front feet were wider for their length than the hind feet; width over length differed by +0.070 on average, 95% interval +0.008 to +0.132.",
    method: { unit: "a horse", n: 5 },
  });
});

test("donkeys are not judged as horses, and too few horses are not enough", () => {
  const horses = [horseStay({ horseId: "A", species: "donkey" })];
  expect(frontAndHind(studyOf({ visits, horses }))).toMatchObject({
    kind: "not_enough_data",
    reason: expect.stringMatching(/^4 horses have/) as string,
  });
  expect(frontAndHind(studyOf())).toMatchObject({ kind: "not_enough_data" });
});

test("row order does not matter", () => {
  expect(frontAndHind(studyOf({ visits: [...visits].reverse() }))).toEqual(frontAndHind(studyOf({ visits })));
});
