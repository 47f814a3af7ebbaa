import { expect, test } from "vitest";
import { observersAgreeing } from "../../src/answer/observersAgreeing.js";
import { footVisit } from "../footVisit.js";
import { studyOf } from "../study.js";
import { herd, renamed, reversed } from "./herd.js";

/** Feet of horses on one day, graded by K and by M. */
function twice(visitDate: string, grades: Readonly<Record<string, readonly (readonly [number, number])[]>>) {
  const feet = ["LF", "RF", "LH", "RH"] as const;
  return Object.entries(grades).flatMap(([horseId, pairs]) =>
    pairs.flatMap(([k, m], i) =>
      [["K", k] as const, ["M", m] as const].map(([observerId, thrushGrade]) =>
        footVisit({ horseId, visitDate, foot: feet[i]!, observerId, thrushGrade, stage: "before_trim" }),
      ),
    ),
  );
}

// By hand: 50 feet by case (grade 1) or not, both 20, K only 5, M only 10, neither 15: the textbook table with kappa 0.40.
// Spread over 13 horses of four feet, less two.
const cells = [
  ...Array<[number, number]>(20).fill([1, 1]),
  ...Array<[number, number]>(5).fill([1, 0]),
  ...Array<[number, number]>(10).fill([0, 1]),
  ...Array<[number, number]>(15).fill([0, 0]),
];
const byHorse = Object.fromEntries(
  Array.from({ length: 13 }, (_, h) => [`H${String(h).padStart(2, "0")}`, cells.filter((__, i) => i % 13 === h)]),
);
const study = studyOf({ visits: twice("2025-03-10", byHorse) });

test("same grades, kappa, and which observer grades higher", () => {
  const answer = observersAgreeing(study);
  if (answer.kind !== "answer") throw new Error(answer.reason);
  // 35 of 50 equal. Two grades are in use, so that weights change nothing: kappa (0.70 - 0.50) / (1 - 0.50) = 0.40, a common textbook
  // example of Cohen's kappa, from memory. M less K: (10 - 5) / 50.
  expect(answer.sentence).toMatch(
    /^K and M gave the same grade to 70% \(95% interval \d+% to \d+%\) of 50 feet of 13 horses that both graded on one day; weighted kappa 0\.40 \(95% interval [−\d.]+ to [\d.]+\)\. /,
  );
  expect(answer.sentence).toContain("M less K +0.10");
  expect(answer.tables[0]!.rows[1]).toEqual({ first: 1, grade0: 5, grade1: 20, grade2: 0, grade3: 0 });
  const [pair] = answer.tables[1]!.rows;
  // Prevalence index |15 - 20| / 50.
  expect(pair).toMatchObject({ pair: "K and M", feet: 50, caseKappa: expect.closeTo(0.4, 12) as number });
  expect(pair!["prevalenceIndex"]).toBeCloseTo(0.1, 12);
});

test("an observer who grades higher at every horse is said to", () => {
  const higher = Object.fromEntries(
    ["A", "B", "C", "D", "E"].map((name) => [
      name,
      [
        [0, 1],
        [1, 2],
        [2, 2],
      ] as const,
    ]),
  );
  const answer = observersAgreeing(studyOf({ visits: twice("2025-03-10", higher) }));
  expect(answer.kind === "answer" && answer.sentence).toContain(
    "M graded higher than K, by +0.67 (95% interval +0.67 to +0.67) of a grade.",
  );
});

test("by quarter, small quarters greyed", () => {
  const few = twice("2025-11-10", { H00: [[0, 3]] });
  const answer = observersAgreeing({ ...study, visits: [...study.visits, ...few] });
  if (answer.kind !== "answer") throw new Error(answer.reason);
  expect(answer.tables[2]!.rows.map(({ quarter, feet, leaning }) => [quarter, feet, leaning])).toEqual([
    ["2025, quarter 1", 50, expect.closeTo(0.1, 12)],
    ["2025, quarter 4", 1, null],
  ]);
  expect(answer.tables[2]!.greyed).toEqual([{ row: 1, reason: "fewer than 5 horses" }]);
});

test("feet that all got one grade have no kappa, and it is said", () => {
  const same = Object.fromEntries(["A", "B", "C", "D", "E"].map((name) => [name, [[0, 0]] as const]));
  const answer = observersAgreeing(studyOf({ visits: twice("2025-03-10", same) }));
  expect(answer.kind === "answer" && answer.sentence).toContain("weighted kappa has no meaning, since all feet got one grade.");
});

test("row order and names of horses do not matter", () => {
  expect(observersAgreeing(reversed(study))).toEqual(observersAgreeing(study));
  expect(observersAgreeing(renamed(study))).toEqual(observersAgreeing(study));
});

test("nothing, one observer, or few horses are not enough", () => {
  expect(observersAgreeing(herd({}))).toMatchObject({
    reason: "No horses have a foot graded by the same two observers on one day; fewer than 5 say nothing of agreement.",
  });
  const alone = { ...study, visits: study.visits.filter(({ observerId }) => observerId === "K") };
  expect(observersAgreeing(alone)).toMatchObject({ kind: "not_enough_data" });
  const few = { ...study, visits: study.visits.filter(({ horseId }) => horseId < "H04") };
  expect(observersAgreeing(few)).toMatchObject({ reason: expect.stringMatching(/^4 horses have/) as string });
});
