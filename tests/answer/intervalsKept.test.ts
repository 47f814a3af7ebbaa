import { expect, test } from "vitest";
import { intervalsKept } from "../../src/answer/intervalsKept.js";
import { herd, reversed } from "./herd.js";

// By hand, 42 days agreed, 7 either way. A 42, B 49, D 35 kept; C 50 late; E 34 early.
const study = herd({
  A: [
    ["2025-01-06", 0, 0],
    ["2025-02-17", 0, 0],
  ],
  B: [
    ["2025-01-06", 0, 0],
    ["2025-02-24", 0, 0],
  ],
  C: [
    ["2025-01-06", 0, 0],
    ["2025-02-25", 0, 0],
  ],
  D: [
    ["2025-01-06", 0, 0],
    ["2025-02-10", 0, 0],
  ],
  E: [
    ["2025-01-06", 0, 0],
    ["2025-02-09", 0, 0],
  ],
});

test("kept, late and early, two-sided, by yard", () => {
  const answer = intervalsKept(study);
  expect(answer).toMatchObject({ kind: "answer", method: { n: 5, missing: 0 } });
  if (answer.kind !== "answer") return;
  expect(answer.sentence).toMatch(
    /^3 of 5 intervals kept to the plan: 60% \(95% interval \d+% to \d+%\)\. 1 ran over it by more than 7 days and 1 came that much early\.$/,
  );
  expect(answer.charts[0]!.table.rows.map(({ yard, yardId, early, kept, late }) => [yard ?? yardId, early, kept, late])).toEqual([
    ["North", 0, 2, 1],
    ["South", 1, 1, 0],
  ]);
});

test("row order does not matter", () => {
  expect(intervalsKept(reversed(study))).toEqual(intervalsKept(study));
});

test("too few horses with a closed interval are not enough", () => {
  expect(intervalsKept(herd({}))).toMatchObject({ kind: "not_enough_data" });
  const small = { ...study, visits: study.visits.filter((visit) => visit.horseId !== "E") };
  expect(intervalsKept(small)).toMatchObject({
    kind: "not_enough_data",
    reason: expect.stringMatching(/^4 horses have/) as string,
  });
});
