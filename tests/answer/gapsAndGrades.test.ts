import { expect, test } from "vitest";
import { gapsAndGrades } from "../../src/answer/gapsAndGrades.js";
import { herd, renamed, reversed } from "./herd.js";

const day = { jan6: "2025-01-06", feb3: "2025-02-03", feb17: "2025-02-17", feb24: "2025-02-24" };
// Thrush in the fore foot or none. Days from one visit to the next: A 28 and 42, B 28 and 42, C 42 and 35, D 56, E 49 and 35, F 56; the study
// ends with the last visit, of E, on day 84.
const study = herd({
  A: [
    [day.jan6, 1, 0],
    [day.feb3, 1, 0],
    ["2025-03-17", 0, 0],
  ],
  B: [
    [day.jan6, 1, 0],
    [day.feb3, 0, 0],
    ["2025-03-17", 0, 0],
  ],
  C: [
    [day.jan6, 0, 0],
    [day.feb17, 1, 0],
    ["2025-03-24", 0, 0],
  ],
  D: [
    [day.jan6, 0, 0],
    ["2025-03-03", 0, 0],
  ],
  E: [
    [day.jan6, 0, 0],
    [day.feb24, 0, 0],
    ["2025-03-31", 0, 0],
  ],
  F: [
    [day.jan6, 0, 0],
    ["2025-03-03", 0, 0],
  ],
});

test("gaps after thrush and after none, and stretches by visits", () => {
  const answer = gapsAndGrades(study);
  if (answer.kind !== "answer") throw new Error(answer.reason);
  const [gaps, bins] = answer.tables;
  // After thrush 28, 42, 28, 35; after none 42, 42, 56, 49, 35, 56, and five open ones of a week or more: A, B, C, D, F.
  expect(gaps!.rows).toEqual([
    { after: "thrush", gaps: 4, visited: 4, four: 2, six: 4, eight: 4 },
    { after: "no thrush", gaps: 11, visited: 6, four: 0, six: 3, eight: 6 },
  ]);
  // Two stretches of 42 days a horse: A, B and C have two visits in one of theirs, all others one.
  expect(bins!.rows).toEqual([
    { visits: "none", stretches: 0, share: 0 },
    { visits: "one", stretches: 9, share: 0.75 },
    { visits: "two or more", stretches: 3, share: 0.25 },
  ]);
  // Weeks: 19 after thrush, 40 after none, 13 in open gaps.
  expect(answer.method).toMatchObject({ n: 72, missing: 0 });
});

test("visits that come sooner after thrush count for less", () => {
  const answer = gapsAndGrades(study);
  if (answer.kind !== "answer") throw new Error(answer.reason);
  // 4 of 16 visits with thrush as they came.
  const shares = /at (\d+)% \(95% interval [^)]*\) of visits as they came, and at (\d+)% /.exec(answer.sentence);
  expect(Number(shares?.[1])).toBe(25);
  expect(Number(shares?.[2])).toBeLessThanOrEqual(25);
  expect(answer.sentence).toMatch(
    /the odds of a visit in any week were \d+\.\d\d \(95% interval \d+\.\d\d to \d+\.\d\d\) times those after a clear one\./,
  );
});

test("row order and names of horses do not matter", () => {
  expect(gapsAndGrades(reversed(study))).toEqual(gapsAndGrades(study));
  expect(gapsAndGrades(renamed(study))).toEqual(gapsAndGrades(study));
});

test("nothing, few horses, and no thrush at all are not enough", () => {
  expect(gapsAndGrades(herd({}))).toMatchObject({
    reason: "No horses have two graded visits; fewer than 5 tell nothing of gaps.",
  });
  const few = { ...study, visits: study.visits.filter(({ horseId }) => horseId < "E") };
  expect(gapsAndGrades(few)).toMatchObject({ reason: "4 horses have two graded visits; fewer than 5 tell nothing of gaps." });
  const clear = { ...study, visits: study.visits.map((visit) => ({ ...visit, thrushGrade: 0 })) };
  expect(gapsAndGrades(clear)).toMatchObject({
    kind: "not_enough_data",
    reason: expect.stringMatching(/^Visits cannot be set against the grade before: /) as string,
  });
});
