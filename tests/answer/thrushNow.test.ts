import { expect, test } from "vitest";
import { thrushNow } from "../../src/answer/thrushNow.js";
import { herd, reversed } from "./herd.js";

// Last visits by hand: A hind 1, B clear, C clear, D fore 2 and hind 1, E clear, F not graded. Horses 2 of 5, feet 3 of 10, yards 2 of 2.
const study = herd({
  A: [
    ["2025-01-06", 2, 2],
    ["2025-02-17", 0, 1],
  ],
  B: [["2025-02-17", 0, 0]],
  C: [["2025-02-18", 0, 0]],
  D: [["2025-02-18", 2, 1]],
  E: [["2025-02-18", 0, 0]],
  F: [
    ["2025-01-06", 1, 1],
    ["2025-02-18", null, null],
  ],
});

test("horses, feet and yards at the last visit", () => {
  const answer = thrushNow(study);
  // Wilson 95 % limits of 2/5, from R 4.2.2 prop.test(2, 5, correct = FALSE): 0.1176208, 0.7692757.
  expect(answer).toMatchObject({
    kind: "answer",
    sentence:
      "At their last visit 2 of 5 horses had thrush in at least one foot: 40% (95% interval 12% to 77%). 1 horse had no frog graded then.",
    method: { n: 5, missing: 1 },
  });
  const rows = answer.kind === "answer" ? answer.tables[0]!.rows : [];
  expect(rows.map(({ unit, cases, n, missing }) => [unit, cases, n, missing])).toEqual([
    ["horses, any foot", 2, 5, 1],
    ["feet", 3, 10, 2],
    ["yards, any horse", 2, 2, 0],
  ]);
});

test("a stricter case definition gives another share and says so", () => {
  const strict = thrushNow({ ...study, settings: { ...study.settings, caseGrade: 2 } });
  expect(strict).toMatchObject({ sentence: expect.stringContaining("1 of 5 horses") as string });
  expect(strict.kind === "answer" && strict.method.text).toContain("grade 2 or more");
});

test("row order does not matter", () => {
  expect(thrushNow(reversed(study))).toEqual(thrushNow(study));
});

test("an empty study and one of four graded horses are not enough", () => {
  expect(thrushNow(herd({}))).toMatchObject({
    kind: "not_enough_data",
    reason: "No frog was graded at the last visit of any horse.",
  });
  const small = { ...study, visits: study.visits.filter((visit) => visit.horseId !== "A") };
  expect(thrushNow(small)).toMatchObject({ reason: "4 horses have a graded frog; fewer than 5 give no share." });
});
