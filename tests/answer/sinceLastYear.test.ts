import { expect, test } from "vitest";
import { sinceLastYear } from "../../src/answer/sinceLastYear.js";
import { herd, renamed, reversed } from "./herd.js";

// By hand, last days 3 March 2025 and 3 March 2024. Share now less share then: A 0 - 1, B 0 - 1/2, C 0 - 0, D 1/2 - 1/2, E 0 - 1: -1, -0.5, 0, 0, -1:
// mean -0.5, sd 0.5, t(4) 2.776 (printed tables): -0.5 +- 0.6207. Now 10%, then 60%. F was there this year only.
const study = herd({
  A: [
    ["2024-03-01", 1, 2],
    ["2025-03-01", 0, 0],
  ],
  B: [
    ["2024-02-01", 1, 0],
    ["2025-02-01", 0, 0],
  ],
  C: [
    ["2024-02-01", 0, 0],
    ["2025-02-01", 0, 0],
  ],
  D: [
    ["2024-03-02", 1, 0],
    ["2025-03-02", 0, 1],
  ],
  E: [
    ["2024-03-03", 1, 1],
    ["2025-03-03", 0, 0],
  ],
  F: [["2025-03-03", 2, 2]],
});

test("the same days of both years, within horses that were there in both", () => {
  const answer = sinceLastYear(study);
  expect(answer.kind === "answer" && answer.sentence).toMatch(
    /^Not to be told apart from a year ago: 10% of looks had thrush in 3 Dec 2024 to 3 Mar 2025, 60% in .* in the 5 horses graded in both; a difference of −50 points \(95% interval −112 to \+12\)\.$/,
  );
  expect(answer.kind === "answer" && [answer.method.n, answer.method.missing]).toEqual([5, 1]);
  expect(answer.kind === "answer" && answer.tables[0]!.rows.map(({ horses }) => horses)).toEqual([3, 2, 0]);
});

test("a visit a day too early is not counted; four horses in both are not enough", () => {
  const early = {
    ...study,
    visits: study.visits.map((row) => (row.visitDate === "2024-03-03" ? { ...row, visitDate: "2023-12-03" } : row)),
  };
  expect(sinceLastYear(early)).toMatchObject({
    kind: "not_enough_data",
    reason: expect.stringMatching(
      /^4 horses have a frog graded in both 3 Dec 2024 to 3 Mar 2025 and 4 Dec 2023 to 3 Mar 2024; fewer than 5/,
    ) as string,
  });
});

test("order and names do not matter", () => {
  const answer = sinceLastYear(study);
  expect(sinceLastYear(reversed(study))).toEqual(answer);
  expect(sinceLastYear(renamed(study))).toEqual(answer);
});
