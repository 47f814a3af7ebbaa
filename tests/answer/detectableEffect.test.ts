import { expect, test } from "vitest";
import { detectableEffect } from "../../src/answer/detectableEffect.js";
import { answered } from "./climateAnswer.js";
import { seasonHerd } from "./seasonHerd.js";

test("a large effect is found, none is not; more yards find more", { timeout: 120_000 }, () => {
  const { tables, method, cautions } = answered(
    detectableEffect(seasonHerd(), { runs: 8, oddsRatios: [2], planned: { yards: 12, horsesPerYard: 2, visitGapDays: 90 } }),
  );
  const [none, large] = tables[0]!.rows;
  // 8 runs: by chance 3 or more of size 0.05 come in 6 of 1000 trials.
  expect(Number(none!["power"])).toBeLessThan(3 / 8);
  expect(Number(large!["power"])).toBeGreaterThan(0.8);
  expect([method.n, large!["runs"]]).toEqual([16, 8]);
  expect(cautions[0]).toMatch(/^8 runs/);
});

test("too few horses to know how alike feet are", () => {
  const study = seasonHerd();
  const few = { ...study, visits: study.visits.filter(({ horseId }) => horseId < "yard 10") };
  const reply = detectableEffect(few);
  expect(reply.kind === "not_enough_data" && reply.reason).toMatch(/^\d horses have a graded frog at a known yard/);
});

test("one yard, or one season, is said; a planned study may be of another size", { timeout: 60_000 }, () => {
  const one = seasonHerd({ yards: 1, horsesPerYard: 8 });
  const planned = { yards: 12, horsesPerYard: 2 };
  const reply = detectableEffect(one);
  expect(reply.kind === "not_enough_data" && reply.reason).toMatch(/at 1 yard/);
  expect(answered(detectableEffect(one, { runs: 1, oddsRatios: [2], planned })).sentence).toMatch(
    /^With 12 yards, 2\.0 horses a yard/,
  );
  const study = seasonHerd();
  const summer = { ...study, visits: study.visits.filter(({ visitDate }) => /-(06|07|08)-/.test(visitDate)) };
  const seasonal = detectableEffect(summer);
  expect(seasonal.kind === "not_enough_data" && seasonal.reason).toMatch(/^Visits lie in 3 months/);
});
