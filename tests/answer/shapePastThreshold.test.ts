import { expect, test } from "vitest";
import { shapePastThreshold } from "../../src/answer/shapePastThreshold.js";
import { defaultSettings } from "../../src/study/defaultSettings.js";
import { footVisit } from "../footVisit.js";
import { horseStay, studyOf } from "../study.js";

const frog = (horseId: string, frogWidthMm: number, visitDate = "2025-03-03") =>
  footVisit({ horseId, visitDate, stage: "before_trim", frogWidthMm, frogLengthMm: 100 });
const visits = [
  frog("A", 66),
  frog("B", 69),
  frog("C", 45, "2025-01-06"),
  frog("C", 80),
  footVisit({ horseId: "D", foot: "LF", stage: "after_trim", toeAngleDeg: 52, heelAngleDeg: 47 }),
  footVisit({ horseId: "D", foot: "RF", stage: "after_trim", toeAngleDeg: 50, heelAngleDeg: 46 }),
  footVisit({ horseId: "E", foot: "RF" }),
];
const asked = (settings = {}) => {
  const answer = shapePastThreshold(studyOf({ visits, settings: { ...defaultSettings, ...settings } }));
  if (answer.kind !== "answer") throw new Error(answer.reason);
  return answer;
};

test("the last reading of each foot, held to the settings; every published threshold beside its source", () => {
  const answer = asked();
  expect(answer.sentence).toMatch(
    /^Measured last, past the thresholds set for this study were 1 of 3 feet for a narrow frog, 1 of 2 feet for a low heel, 0 of 1 pairs for an uneven toe angle\./,
  );
  expect(answer.tables[1]!.rows.map(({ horseId, what, threshold }) => [horseId, what, threshold])).toEqual([
    ["A", "near fore", "below 0.67"],
    ["D", "near fore", "at or above 5"],
  ]);
  const past = answer.tables[0]!.rows.map(({ threshold, past: count, of, used }) => [threshold, count, of, used]);
  expect(past).toEqual([
    [0.67, 1, 3, "set for this study"],
    [0.5, 0, 3, ""],
    [0.7, 2, 3, ""],
    [5, 1, 2, "set for this study"],
    [5, 0, 1, "set for this study"],
    [1.5, 1, 1, ""],
  ]);
  expect(answer.tables[0]!.rows.every(({ source }) => String(source).length > 5)).toBe(true);
  expect(answer.method.missing).toBe(1);
});

test("another threshold is a setting, and is listed as one without a source", () => {
  const answer = asked({ contractedFrogIndex: 0.68 });
  expect(answer.tables[0]!.rows[0]).toMatchObject({
    threshold: 0.68,
    used: "set for this study",
    source: "set for this study, no source given",
  });
});

test("donkeys have no flags, and without measures nothing can be said", () => {
  const horses = [horseStay({ horseId: "A", species: "donkey" })];
  expect(shapePastThreshold(studyOf({ visits: [frog("A", 50)], horses }))).toMatchObject({ kind: "not_enough_data" });
  expect(shapePastThreshold(studyOf())).toMatchObject({ kind: "not_enough_data" });
});

test("of a day with both stages the one after the trim counts, by itself", () => {
  const both = [frog("F", 60), { ...frog("F", 75), stage: "after_trim" as const }];
  for (const rows of [both, [...both].reverse()]) {
    const answer = shapePastThreshold(studyOf({ visits: rows }));
    expect(answer.kind === "answer" && answer.sentence).toContain("0 of 1 feet for a narrow frog");
  }
  const opened = [frog("F", 75), { ...frog("F", 60), stage: "after_trim" as const }];
  const answer = shapePastThreshold(studyOf({ visits: opened }));
  expect(answer.kind === "answer" && answer.sentence).toContain("1 of 1 feet for a narrow frog");
});
