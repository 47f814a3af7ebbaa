import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import type { Answer, NotEnoughData } from "../../src/answer/Answer.js";
import { gapsAndGrades } from "../../src/answer/gapsAndGrades.js";
import { horsesToWatch } from "../../src/answer/horsesToWatch.js";
import { keepingTheInterval } from "../../src/answer/keepingTheInterval.js";
import { observersAgreeing } from "../../src/answer/observersAgreeing.js";
import { whereItVaries } from "../../src/answer/whereItVaries.js";
import { yardsAndGround } from "../../src/answer/yardsAndGround.js";
import type { DistrictTruth } from "../../src/simulate/district/districtTruth.js";
import { demoStudy } from "../simulate/demoStudy.js";

const study = await demoStudy();
const truth = JSON.parse(readFileSync(`${import.meta.dirname}/../../data-demo/truth.json`, "utf8")) as DistrictTruth;

function rowsOf(answer: Answer | NotEnoughData, table: number) {
  if (answer.kind !== "answer") throw new Error(answer.reason);
  return answer.tables[table]!.rows;
}

test("the two yards made to run late are those that run late", () => {
  const rows = rowsOf(keepingTheInterval(study), 0);
  const lateShare = (yardId: string) => {
    const row = rows.find((each) => each["yardId"] === yardId)!;
    return (row["late"] as number) / (row["intervals"] as number);
  };
  const late = truth.yards.filter(({ runsLate }) => runsLate).map(({ yardId }) => lateShare(yardId));
  const others = truth.yards.filter(({ runsLate }) => !runsLate).map(({ yardId }) => lateShare(yardId));
  expect(late).toHaveLength(2);
  expect(Math.min(...late)).toBeGreaterThan(Math.max(...others));
});

test("horses named first are among those that were made prone to thrush", () => {
  const shown = rowsOf(horsesToWatch(study), 0).map(({ group }) => group);
  const byEffect = [...truth.horses].sort((a, b) => b.effect - a.effect).map(({ horseId }) => horseId);
  // Yards and feet have effects of their own, so that the order is not that of the horses alone: of the ten shown most lie in the top fifth.
  const prone = new Set(byEffect.slice(0, Math.ceil(byEffect.length / 5)));
  expect(shown.filter((name) => prone.has(String(name))).length).toBeGreaterThanOrEqual(7);
});

test("the spread between horses and the second observer's leaning are found within their limits", () => {
  const answer = whereItVaries(study);
  const horses = rowsOf(answer, 0).find(({ between }) => between === "Horses")!;
  expect(horses["lower"]).toBeLessThan(truth.effects.horseSd);
  expect(horses["upper"]).toBeGreaterThan(truth.effects.horseSd);
  const second = rowsOf(answer, 1)[1]!;
  expect(second["lower"]).toBeLessThan(Math.exp(truth.effects.secondObserver));
  expect(second["upper"]).toBeGreaterThan(Math.exp(truth.effects.secondObserver));
  const scored = observersAgreeing(study);
  expect(scored.kind === "answer" && scored.sentence).toContain("M graded higher than K");
});

test("yards whose planted effects are small beside the spread of their horses are not set apart", () => {
  const answer = yardsAndGround(study);
  expect(answer.kind === "answer" && answer.sentence).toMatch(/^No yard can be told from the mean/);
});

test("visits made to come sooner after a bad grade are found to", () => {
  const answer = gapsAndGrades(study);
  expect(answer.kind === "answer" && answer.sentence).toMatch(/^Visits came sooner after one with thrush: /);
});
