import { expect, test } from "vitest";
import { dueStateInWords } from "../../../src/answer/words/dueStateInWords.js";

test("every state in words, none like another", () => {
  const states = ["over", "past", "to_come", "lost", "no_plan", "not_started"] as const;
  const words = states.map(dueStateInWords);
  expect(new Set(words).size).toBe(states.length);
  expect(words.join()).not.toMatch(/_/);
});
