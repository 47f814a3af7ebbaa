import { expect, test } from "vitest";
import { seasonReview } from "../../src/answer/seasonReview.js";
import { reviewPage } from "../../src/show/reviewPage.js";
import { footVisit } from "../footVisit.js";
import { studyOf } from "../study.js";

test("what cannot be answered stands after what can, and is counted", () => {
  const review = seasonReview(studyOf({ name: "Two yards", visits: [footVisit({ visitDate: "2025-01-06", thrushGrade: 3 })] }));
  const page = reviewPage(review, "2025-03-01");
  expect(page.title).toBe("Two yards: a season's review");
  expect(page.intro).toEqual([
    "Visits from 6 January 2025 to 6 January 2025, looked at as of 6 January 2025.",
    "14 questions could not be answered from these records; the reasons stand at the end.",
  ]);
  expect(page.answers.map((answer) => answer.kind)).toEqual([
    ...Array<string>(2).fill("answer"),
    ...Array<string>(14).fill("not_enough_data"),
  ]);
  expect(page.answers[0]!.id).toBe("for-the-vet");
  expect(page.cautions.join(" ")).toContain("not a diagnosis");
});

test("an empty review says so", () => {
  expect(reviewPage(seasonReview(studyOf()), "2025-03-01").intro[0]).toBe("No visit has been recorded yet.");
});
