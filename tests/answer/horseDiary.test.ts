import { expect, test } from "vitest";
import { horseDiary } from "../../src/answer/horseDiary.js";
import { studyOf } from "../study.js";
import { oneHorse } from "./oneHorse.js";

const study = oneHorse();
const sentence = (of: typeof study) => {
  const answer = horseDiary(of);
  return answer.kind === "answer" ? answer.sentence : answer.reason;
};

test("intervals against the plan, visits out of turn, the next date", () => {
  // 6 January to 24 February: 49 days on a plan of 42, 7 over: kept. Next: 24 February + 42.
  expect(sentence(study)).toBe(
    "Of 1 interval between routine visits 1 kept to the plan within 7 days, 0 came earlier and 0 later. Other visits: lame 1. Last routine visit 24 February 2025, 42 days agreed: next due 7 April 2025.",
  );
});

test("past its date, left, or without a plan, it says so", () => {
  const later = { ...study, settings: { ...study.settings, asOf: "2025-04-10" } };
  expect(sentence(later)).toMatch(/next due 7 April 2025, 3 days ago\.$/);
  expect(sentence({ ...study, horses: study.horses.map((stay) => ({ ...stay, leftOn: "2025-03-15" })) })).toMatch(
    /The horse has left\.$/,
  );
  expect(sentence({ ...study, horses: [] })).toMatch(/^No interval .* Next date: none, no interval agreed\.$/);
  expect(horseDiary(studyOf())).toMatchObject({ kind: "not_enough_data" });
});
