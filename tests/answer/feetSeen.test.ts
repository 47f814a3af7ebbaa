import { expect, test } from "vitest";
import { feetSeen } from "../../src/answer/feetSeen.js";
import type { FootVisit } from "../../src/study/FootVisit.js";
import { footVisit } from "../footVisit.js";
import { studyOf } from "../study.js";

// Two horses, worked by hand. A on 6 January: four feet, the off hind not seen (would not stand), the near fore measured before
// and after trimming (one look). B on 7 January: near fore seen, off fore row holds nothing.
const visits: FootVisit[] = [
  footVisit({ foot: "LF", stage: "before_trim", thrushGrade: 1 }),
  footVisit({ foot: "LF", stage: "after_trim", toeLengthMm: 84 }),
  footVisit({ foot: "RF", thrushGrade: 0 }),
  footVisit({ foot: "LH", thrushGrade: 0 }),
  footVisit({ foot: "RH", examined: false, notExaminedReason: "would not stand" }),
  footVisit({ horseId: "B", visitDate: "2025-01-07", foot: "LF", examined: true }),
  footVisit({ horseId: "B", visitDate: "2025-01-07", foot: "RF" }),
];

test("counts visits, horses and feet, and says what was not seen and why", () => {
  const answer = feetSeen(studyOf({ visits }));
  expect(answer).toMatchObject({
    kind: "answer",
    sentence:
      "2 visits to 2 horses, 4 feet looked at. 1 foot was not looked at: would not stand (1). For 1 foot the records do not say.",
    method: { n: 6, missing: 1 },
  });
  expect(answer.kind === "answer" && answer.tables[0]?.rows).toEqual([
    { foot: "near fore", seen: 2, notSeen: 0, notSaid: 0 },
    { foot: "off fore", seen: 1, notSeen: 0, notSaid: 1 },
    { foot: "near hind", seen: 1, notSeen: 0, notSaid: 0 },
    { foot: "off hind", seen: 0, notSeen: 1, notSaid: 0 },
  ]);
});

test("specimens are told apart: they make no visit, no horse and no foot of the herd, and the reason is said", () => {
  const specimens = [
    footVisit({ horseId: "cabinet", foot: "LF_specimen", thrushGrade: 3 }),
    footVisit({ horseId: "cabinet", foot: "U", toeLengthMm: 80 }),
  ];
  const answer = feetSeen(studyOf({ visits: [...visits, ...specimens] }));
  expect(answer).toMatchObject({
    sentence:
      "2 visits to 2 horses, 4 feet looked at. 1 foot was not looked at: would not stand (1). For 1 foot the records do not say. " +
      "2 specimens are in no share of feet or horses, having no live horse, and count for shape only.",
    method: { n: 6, missing: 1 },
  });
  expect(answer.kind === "answer" && answer.tables[0]?.rows.slice(4)).toEqual([
    { foot: "end and side unknown", seen: 1, notSeen: 0, notSaid: 0 },
    { foot: "near fore, specimen", seen: 1, notSeen: 0, notSaid: 0 },
  ]);
});

test("specimens alone are no visits to no horses", () => {
  expect(feetSeen(studyOf({ visits: [footVisit({ foot: "F" })] }))).toMatchObject({
    kind: "not_enough_data",
    reason:
      "No foot of a live horse is recorded. 1 specimen is in no share of feet or horses, having no live horse, and counts for shape only.",
  });
});

test("row order does not matter", () => {
  expect(feetSeen(studyOf({ visits: [...visits].reverse() }))).toEqual(feetSeen(studyOf({ visits })));
});

test("an empty study is not enough", () => {
  expect(feetSeen(studyOf())).toMatchObject({ kind: "not_enough_data", reason: "No foot has been recorded yet." });
});
