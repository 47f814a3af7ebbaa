import { expect, test } from "vitest";
import { thrushByMonth } from "../../src/answer/thrushByMonth.js";
import { gaugeDay } from "../study.js";
import { herd, reversed } from "./herd.js";

const grades = (january: number, june: number): [string, number, number][] => [
  ["2025-01-06", january, 0],
  ["2025-06-16", june, 0],
];

// By hand: January 4 of 5 horses, June 1 of 5; F was graded in March only, so March has one horse.
const study = {
  ...herd({ A: grades(1, 0), B: grades(2, 0), C: grades(1, 0), D: grades(1, 1), E: grades(0, 0), F: [["2025-03-03", 1, 1]] }),
  weather: Array.from({ length: 31 }, (_, i) =>
    gaugeDay({ gaugeId: "G", date: `2025-01-${String(i + 1).padStart(2, "0")}`, rainMm: 3 }),
  ),
};

test("the worst and the best month, with rain where the month is complete", () => {
  const answer = thrushByMonth(study);
  // Wilson, R 4.2.2 prop.test(4, 5, correct = FALSE): 0.376, 0.964; prop.test(1, 5, correct = FALSE): 0.036, 0.624.
  expect(answer).toMatchObject({
    sentence:
      "Thrush was most frequent in January 2025, in 80% (95% interval 38% to 96%) of the horses seen, and least in June 2025, in 20% (95% interval 4% to 62%).",
    method: { n: 11, missing: 0 },
  });
  const rows = answer.kind === "answer" ? answer.charts[0]!.table.rows : [];
  expect(rows.map(({ cases, n, rainMm }) => [cases, n, rainMm])).toEqual([
    [4, 5, 93],
    [0, 1, null],
    [1, 5, null],
  ]);
});

test("row order does not matter", () => {
  expect(thrushByMonth(reversed(study))).toEqual(thrushByMonth(study));
});

test("one month with enough horses is no comparison", () => {
  expect(thrushByMonth(herd({}))).toMatchObject({ kind: "not_enough_data" });
  const january = { ...study, visits: study.visits.filter((visit) => visit.visitDate < "2025-02") };
  expect(thrushByMonth(january)).toMatchObject({
    reason: "1 month has at least 5 horses with a graded frog; two are needed to compare.",
  });
});
