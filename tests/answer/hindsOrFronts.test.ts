import { expect, test } from "vitest";
import { hindsOrFronts } from "../../src/answer/hindsOrFronts.js";
import { herd, renamed, reversed } from "./herd.js";

// By hand, shares of looks with thrush (hind, fore): A 1, 0; B 1/2, 0; C 0, 0; D 1, 1; E 1/2, 0. Differences 1, .5, 0, 0, .5: mean 0.4,
// sd 0.4183, t(4) 2.776 (printed tables): 0.4 +- 0.519. Last visits: hind only A and E, both D, neither B and C.
const study = herd({
  A: [["2025-01-01", 0, 1]],
  B: [
    ["2025-01-01", 0, 2],
    ["2025-02-10", 0, 0],
  ],
  C: [["2025-01-01", 0, 0]],
  D: [["2025-01-01", 1, 1]],
  E: [
    ["2025-01-01", 0, 0],
    ["2025-02-10", 0, 1],
  ],
});

test("the difference within horses, and the pairs of the last visit", () => {
  const answer = hindsOrFronts(study);
  expect(answer.kind === "answer" && answer.sentence).toMatch(
    /^Hind and front feet cannot be told apart in how often they had thrush: 60% of looks behind and 20% in front, 5 horses counting once each; a difference of \+40 points \(95% interval −12 to \+92\)\./,
  );
  const [pairs] = answer.kind === "answer" ? answer.tables : [];
  expect(pairs!.rows.map(({ horses }) => horses)).toEqual([1, 2, 0, 2]);
  // Exact McNemar on 2 against 0: 2 x (1/2)^2 = 0.5.
  expect(answer.kind === "answer" && answer.method.text).toContain("exact McNemar test p 0.500");
});

test("clefts: shares of looks with thrush at which one was named", () => {
  const visits = study.visits.map((row) =>
    row.thrushGrade !== null && row.thrushGrade > 0
      ? { ...row, thrushSite: row.foot === "LF" ? (["medial_groove"] as const) : (["central_sulcus", "lateral_groove"] as const) }
      : row,
  );
  const answer = hindsOrFronts({ ...study, visits });
  expect(answer.kind === "answer" && answer.sentence).toContain("most often the central sulcus: 4 of 5 looks with thrush");
});

test("order and names do not matter; four horses are not enough", () => {
  const answer = hindsOrFronts(study);
  expect(hindsOrFronts(reversed(study))).toEqual(answer);
  expect(hindsOrFronts(renamed(study))).toEqual(answer);
  const four = { ...study, visits: study.visits.filter(({ horseId }) => horseId !== "A") };
  expect(hindsOrFronts(four)).toMatchObject({
    kind: "not_enough_data",
    reason: expect.stringMatching(/^4 horses have/) as string,
  });
});
