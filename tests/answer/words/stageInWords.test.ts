import { expect, test } from "vitest";
import { stageInWords } from "../../../src/answer/words/stageInWords.js";

test("every stage in words, an unknown one said to be so", () => {
  const stages = ["before_trim", "after_trim", "single", null] as const;
  expect(stages.map(stageInWords)).toEqual(["before trimming", "after trimming", "one reading a visit", "stage not recorded"]);
});
