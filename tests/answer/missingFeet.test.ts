import { expect, test } from "vitest";
import { missingFeet } from "../../src/answer/missingFeet.js";
import { herd, renamed, reversed } from "./herd.js";

const day = "2025-01-06";
// By hand: of 12 looks 10 are graded, 4 with thrush. A misses one and has thrush in the other, E misses one and has none.
const study = herd({
  A: [[day, 1, null]],
  B: [[day, 1, 1]],
  C: [[day, 0, 0]],
  D: [[day, 0, 1]],
  E: [[day, null, 0]],
  F: [[day, 0, 0]],
});

test("bounds, and what lies between them", () => {
  const answer = missingFeet(study);
  if (answer.kind !== "answer") throw new Error(answer.reason);
  // 4/12, 6/12, 4/10.
  expect(answer.sentence).toMatch(
    /^2 of 12 looks at a foot have no grade: were none of them thrush the share would be 33%, were all of them 50%, against 40% \(95% interval \d+% to \d+%\) of graded ones\.$/,
  );
  expect(answer.method).toMatchObject({ n: 10, missing: 2 });
  const shares = new Map(answer.tables[0]!.rows.map(({ supposed, estimate }) => [supposed, estimate as number]));
  expect(shares.get("none had thrush")).toBeCloseTo(4 / 12, 12);
  // Odds of graded looks 4 to 6: half 2 to 6, risk 1/4; twice 8 to 6, risk 4/7; four times 16 to 6, risk 8/11.
  expect(shares.get("half the odds of thrush")).toBeCloseTo((4 + 2 / 4) / 12, 12);
  expect(shares.get("the same odds")).toBeCloseTo(0.4, 12);
  expect(shares.get("twice the odds")).toBeCloseTo((4 + 8 / 7) / 12, 12);
  expect(shares.get("four times the odds")).toBeCloseTo((4 + 16 / 11) / 12, 12);
  // A's graded look had thrush, E's had not: one more case.
  expect(shares.get("each like that horse's graded looks")).toBeCloseTo(5 / 12, 12);
  expect(shares.get("all had thrush")).toBeCloseTo(0.5, 12);
});

test("horses at their last visit: A has thrush anyway, E might have", () => {
  const answer = missingFeet(study);
  const [, horses] = answer.kind === "answer" ? answer.tables : [];
  expect(horses!.rows.map((row) => row["horses"])).toEqual([3, 1, 4, 6]);
});

test("a study without a missing grade says so", () => {
  const whole = herd(Object.fromEntries(["A", "B", "C", "D", "E"].map((name, i) => [name, [[day, i % 2, 0]]])));
  const answer = missingFeet(whole);
  expect(answer.kind === "answer" && answer.sentence).toMatch(
    /^Every foot that has a row was graded, so none is missing from the share with thrush of 20% \(95% interval/,
  );
});

test("row order and names of horses do not matter", () => {
  expect(missingFeet(reversed(study))).toEqual(missingFeet(study));
  expect(missingFeet(renamed(study))).toEqual(missingFeet(study));
});

test("an empty study and four horses are not enough", () => {
  expect(missingFeet(herd({}))).toMatchObject({ reason: "No horses have a graded frog; fewer than 5 give no share." });
  const four = { ...study, visits: study.visits.filter(({ horseId }) => horseId > "B") };
  expect(missingFeet(four)).toMatchObject({ reason: "4 horses have a graded frog; fewer than 5 give no share." });
});
