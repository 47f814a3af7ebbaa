import { expect, test } from "vitest";
import { overTheDate } from "../../src/answer/overTheDate.js";
import { herd, reversed } from "./herd.js";

// By hand, 42 days agreed, 7 either way, as of 2025-05-01. A: 42, 42 (kept), open since 03-31 = 31 days, not due.
// B: 60 (18 over), 56 (14 over), open since 04-30. C: 49 (7 over: kept), open since 02-24, 66 days = 24 over now.
const study = herd({
  A: [
    ["2025-01-06", 0, 0],
    ["2025-02-17", 0, 0],
    ["2025-03-31", 0, 0],
  ],
  B: [
    ["2025-01-04", 0, 0],
    ["2025-03-05", 0, 0],
    ["2025-04-30", 0, 0],
  ],
  C: [
    ["2025-01-06", 0, 0],
    ["2025-02-24", 0, 0],
  ],
});
const asOf = { ...study, settings: { ...study.settings, asOf: "2025-05-01" } };

test("who ran over, how often, and who is overdue", () => {
  const answer = overTheDate(asOf);
  expect(answer).toMatchObject({
    sentence:
      "1 horse of 3 ran more than 7 days over at least once, 1 horse more than once. On 1 May 2025 1 horse was overdue: C (24 days).",
  });
  expect(answer.kind === "answer" && answer.tables[0]!.rows).toEqual([
    { horseId: "B", yardId: "North", intervals: 2, late: 2, mostDaysLate: 18, overdueDays: null },
    { horseId: "C", yardId: "North", intervals: 1, late: 0, mostDaysLate: null, overdueDays: 24 },
  ]);
});

test("where none ran over, one sentence says so, and begins like one", () => {
  const kept = { ...asOf, visits: asOf.visits.filter(({ horseId }) => horseId === "A") };
  expect(overTheDate(kept)).toMatchObject({
    sentence: expect.stringMatching(/^No horse of 1 ran more than 7 days over\. On /) as string,
  });
});

test("row order does not matter", () => {
  expect(overTheDate(reversed(asOf))).toEqual(overTheDate(asOf));
});

test("without visits, or without a plan, there is no answer", () => {
  expect(overTheDate(herd({}))).toMatchObject({ kind: "not_enough_data" });
  expect(overTheDate({ ...study, horses: [] })).toMatchObject({ kind: "not_enough_data" });
});
