import { expect, test } from "vitest";
import { feetOfOneVisit } from "../../src/answer/feetOfOneVisit.js";
import type { FootVisit } from "../../src/study/FootVisit.js";
import { footVisit } from "../footVisit.js";
import { studyOf } from "../study.js";

// Twenty-one other horses with near fores 1.00 to 1.20 wide for their length; Bess has 1.30 in front now and had 1.10 before.
const herd = Array.from({ length: 21 }, (_, k): FootVisit =>
  footVisit({ horseId: `h${k}`, stage: "after_trim", hoofWidthMm: 100 + k, hoofLengthMm: 100 }),
);
const bess = [
  footVisit({ horseId: "Bess", visitDate: "2025-01-06", stage: "after_trim", hoofWidthMm: 110, hoofLengthMm: 100 }),
  footVisit({ horseId: "Bess", visitDate: "2025-03-03", stage: "before_trim", hoofWidthMm: 105, hoofLengthMm: 100 }),
  footVisit({
    horseId: "Bess",
    visitDate: "2025-03-03",
    stage: "after_trim",
    hoofWidthMm: 130,
    hoofLengthMm: 100,
    toeAngleDeg: 50,
  }),
];

test("the last visit, at its fuller stage, beside the other horses at that stage", () => {
  const answer = feetOfOneVisit(studyOf({ visits: [...herd, ...bess] }), "Bess");
  if (answer.kind !== "answer") throw new Error(answer.reason);
  expect(answer.sentence).toBe(
    "On 3 March 2025, after trimming, 1 of 1 measure of the feet of Bess lay outside the band of the other horses of this herd.",
  );
  expect(answer.charts[0]!.reading).toBe("Outside the bands of this herd: near fore, shape index 1.30.");
  // Halfway between the lowest two, 1.005, and the highest two, 1.195.
  expect(Number(answer.charts[0]!.table.rows[0]!["lower"])).toBeCloseTo(1.005, 9);
  expect(Number(answer.charts[0]!.table.rows[0]!["upper"])).toBeCloseTo(1.195, 9);
});

test("a horse without measures, or without a herd", () => {
  expect(feetOfOneVisit(studyOf({ visits: herd }), "Bess")).toMatchObject({ reason: "No shape of a foot of Bess is on record." });
  expect(feetOfOneVisit(studyOf({ visits: [...herd.slice(0, 3), ...bess] }), "Bess")).toMatchObject({
    kind: "not_enough_data",
    reason: expect.stringMatching(/^Fewer than 5 other horses/) as string,
  });
});

test("two observers on one day make one reading, their mean, and the order of rows makes no difference", () => {
  const twice = [
    footVisit({
      horseId: "Bess",
      visitDate: "2025-05-05",
      stage: "before_trim",
      observerId: "K",
      hoofWidthMm: 104,
      hoofLengthMm: 100,
    }),
    footVisit({
      horseId: "Bess",
      visitDate: "2025-05-05",
      stage: "before_trim",
      observerId: "M",
      hoofWidthMm: 108,
      hoofLengthMm: 100,
    }),
    footVisit({
      horseId: "Bess",
      visitDate: "2025-05-05",
      stage: "after_trim",
      observerId: "K",
      hoofWidthMm: 130,
      hoofLengthMm: 100,
    }),
  ];
  const others = herd.flatMap((row): FootVisit[] => [row, { ...row, stage: "before_trim" }]);
  const visits = [...others, ...bess, ...twice];
  const [answer, back] = [visits, [...visits].reverse()].map((rows) => feetOfOneVisit(studyOf({ visits: rows }), "Bess"));
  expect(back).toEqual(answer);
  if (answer!.kind !== "answer") throw new Error(answer!.reason);
  expect(answer!.sentence).toMatch(/^On 5 May 2025, before trimming, 0 of 1 measure /);
  expect(answer!.charts[0]!.table.rows).toHaveLength(1);
  expect(Object.values(answer!.charts[0]!.table.rows[0]!)).toContain("1.06");
});
