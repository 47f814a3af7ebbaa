import { expect, test } from "vitest";
import { seasonReview } from "../../src/answer/seasonReview.js";
import { studyOf } from "../study.js";
import { herd } from "./herd.js";

const study = herd({
  A: [["2025-01-06", 1, 2]],
  B: [["2025-02-17", 0, 0]],
});

test("every question is answered, or said why it cannot be", () => {
  const review = seasonReview(study);
  const ids = [...review.answers, ...review.unanswered].map((reply) => reply.id).sort();
  const asked = [
    "feet-seen",
    "for-the-vet",
    "front-and-hind",
    "fronts-going-odd",
    "heels-running-under",
    "hinds-or-fronts",
    "keeping-the-interval",
    "new-and-standing-thrush",
    "over-the-date",
    "shape-by-interval",
    "shoes-staying-on",
    "thrush-after-rain",
    "thrush-by-month",
    "thrush-now",
    "toes-between-visits",
    "yards-and-ground",
  ];
  expect(ids).toEqual(asked);
  expect(review).toMatchObject({ from: "2025-01-06", to: "2025-02-17", asOf: "2025-02-17" });
});

test("feet that are the vet's come first", () => {
  expect(seasonReview(study).answers[0]!.id).toBe("for-the-vet");
});

test("an empty study has no answer to any of the sixteen questions", () => {
  const review = seasonReview(studyOf());
  expect(review.answers).toEqual([]);
  expect(review.unanswered).toHaveLength(16);
  expect(review).toMatchObject({ from: null, to: null, asOf: null });
});
