import { describe, expect, test } from "vitest";
import type { Answer, NotEnoughData } from "../../src/answer/Answer.js";
import { climateStudy } from "../../src/answer/climateStudy.js";
import { answered } from "./climateAnswer.js";
import { poorStudies, seasonHerd } from "./seasonHerd.js";

const parts = [
  "study-declaration",
  "study-records",
  "study-description",
  "study-exposure",
  "rain-effect",
  "rain-lag-and-shape",
  "rain-sensitivity",
  "horn-colour",
  "interval-length",
  "since-the-change",
  "detectable-effect",
  "study-paper",
] as const;
const ids = (replies: readonly (Answer | NotEnoughData)[], kind: Answer["kind"] | NotEnoughData["kind"]) =>
  replies.filter((reply) => reply.kind === kind).map(({ id }) => id);

test("the declaration comes first, the paper last, all that the records can carry between", { timeout: 120_000 }, () => {
  const replies = climateStudy(seasonHerd(), { runs: 1 });
  expect(replies.map(({ id }) => id)).toEqual(parts);
  expect(ids(replies, "not_enough_data")).toEqual(["since-the-change"]);
  for (const reply of replies) if (reply.kind === "answer") answered(reply);
});

const rain = ["rain-effect", "rain-lag-and-shape", "rain-sensitivity"];
/** Parts that each poor study cannot carry; none of them has a dated change. */
const cannot: Readonly<Record<string, readonly string[]>> = {
  "one yard": [...rain, "interval-length", "detectable-effect"],
  "three horses": ["study-description", ...rain, "horn-colour", "interval-length", "detectable-effect"],
  "no weather": ["study-exposure", ...rain],
  "all cases": [...rain, "horn-colour", "interval-length", "detectable-effect"],
  "no cases": [...rain, "horn-colour", "interval-length", "detectable-effect"],
  "one season": [...rain, "interval-length", "detectable-effect"],
  "no grade": ["study-description", ...rain, "horn-colour", "interval-length", "detectable-effect"],
};

describe.each(poorStudies().map(([name, study]) => [name, study] as const))("%s", (name, study) => {
  test("every part is answered, or skipped with its reason; no number is NaN", { timeout: 60_000 }, () => {
    const replies = climateStudy(study, { runs: 1 });
    expect(replies.map(({ id }) => id)).toEqual(parts);
    expect(ids(replies, "not_enough_data").sort()).toEqual([...(cannot[name] ?? []), "since-the-change"].sort());
    for (const reply of replies) {
      if (reply.kind === "answer") answered(reply);
      else expect(reply.reason).toMatch(/^\S.*\.$/s);
    }
    expect(JSON.stringify(replies)).not.toMatch(/NaN|undefined|Infinity/);
    expect(containsOddNumber(replies)).toBe(false);
  });
});

/** JSON writes NaN and the infinities as null, so they are looked for in the values themselves. */
function containsOddNumber(value: unknown): boolean {
  if (typeof value === "number") return !Number.isFinite(value);
  return typeof value === "object" && value !== null && Object.values(value).some(containsOddNumber);
}
