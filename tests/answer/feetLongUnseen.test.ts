import { expect, test } from "vitest";
import { feetLongUnseen } from "../../src/answer/feetLongUnseen.js";
import { defaultSettings } from "../../src/study/defaultSettings.js";
import type { Foot } from "../../src/study/Foot.js";
import { footVisit } from "../footVisit.js";
import { horseStay, studyOf } from "../study.js";

const four: readonly Foot[] = ["LF", "RF", "LH", "RH"];

/** A visit at which all four feet were looked at, but for those named, with the reason. */
function visit(horseId: string, visitDate: string, unseen: Partial<Record<Foot, string>> = {}) {
  return four.map((foot) => {
    const reason = unseen[foot];
    return reason === undefined
      ? footVisit({ horseId, visitDate, foot, examined: true })
      : footVisit({ horseId, visitDate, foot, examined: false, notExaminedReason: reason });
  });
}

// By hand, as of 31 March 2025. A: off hind last seen on 6 January, 84 days before (25 + 28 + 31), two visits without a look since. B: near hind
// missed at the first visit but seen at the last. C: near fore never seen in its one visit. D: all seen. E has left. Of the last visit of F the near
// fore was seen and of three feet nothing is said. G came back and has had no visit since. Judged: 4 x 4 + 1 feet, three not; unseen: A's and C's.
const visits = [
  ...visit("A", "2024-11-25"),
  ...visit("A", "2025-01-06"),
  ...visit("A", "2025-02-17", { RH: "would not stand" }),
  ...visit("A", "2025-03-31", { RH: "ran out of light" }),
  ...visit("B", "2025-01-06", { LH: "would not stand" }),
  ...visit("B", "2025-02-17"),
  ...visit("C", "2025-02-20", { LF: "bandaged by the vet" }),
  ...visit("D", "2025-02-20"),
  ...visit("E", "2025-01-07", { LF: "would not stand" }),
  ...visit("G", "2025-01-07", { RF: "would not stand" }),
  footVisit({ horseId: "F", visitDate: "2025-03-01", foot: "LF", examined: true }),
];
const horses = [
  ...["A", "B", "C", "D", "F"].map((horseId) => horseStay({ horseId, yardId: "Y", joinedOn: "2024-01-01" })),
  ...["E", "G"].map((horseId) => horseStay({ horseId, yardId: "Y", joinedOn: "2024-01-01", leftOn: "2025-02-01" })),
  horseStay({ horseId: "G", yardId: "Y", joinedOn: "2025-03-01" }),
];
const study = studyOf({ visits, horses });

test("names the feet missed at the last visit, the longest unseen first, with days, visits and reason", () => {
  const answer = feetLongUnseen(study);
  expect(answer).toMatchObject({
    kind: "answer",
    sentence:
      "2 of 17 feet, of 2 horses, were not looked at at the last visit to the horse. Longest unseen: C, near fore (never) and A, off hind (84 days).",
    method: { n: 17, missing: 3 },
  });
  expect(answer.kind === "answer" && answer.tables[0]?.rows).toEqual([
    { horse: "C", yard: "Y", foot: "near fore", lastSeen: null, days: null, visits: 1, reason: "bandaged by the vet" },
    { horse: "A", yard: "Y", foot: "off hind", lastSeen: "6 Jan 2025", days: 84, visits: 2, reason: "ran out of light" },
  ]);
});

test("the day of the review decides what is the last visit", () => {
  const early = feetLongUnseen({ ...study, settings: { ...defaultSettings, asOf: "2025-01-10" } });
  const rows = early.kind === "answer" ? early.tables[0]?.rows : [];
  expect(rows?.map(({ horse, foot }) => [horse, foot])).toEqual([
    ["B", "near hind"],
    ["E", "near fore"],
    ["G", "off fore"],
  ]);
});

test("where every foot was looked at it says so", () => {
  const all = studyOf({ visits: visit("D", "2025-02-20"), horses });
  expect(feetLongUnseen(all)).toMatchObject({
    sentence: "Every foot was looked at at the last visit to its horse (4 feet).",
    tables: [],
    method: { n: 4, missing: 0 },
  });
});

test("row order does not matter", () => {
  expect(feetLongUnseen({ ...study, visits: [...visits].reverse() })).toEqual(feetLongUnseen(study));
});

test("an empty study, and one that never says what was looked at, are not enough", () => {
  expect(feetLongUnseen(studyOf())).toMatchObject({
    kind: "not_enough_data",
    reason: "No horse that is still there has had a visit.",
  });
  expect(feetLongUnseen(studyOf({ visits: [footVisit()] }))).toMatchObject({
    kind: "not_enough_data",
    reason: "No last visit says of any foot whether it was looked at.",
  });
});
