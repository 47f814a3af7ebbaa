import { expect, test } from "vitest";
import { horsesGone } from "../../src/derive/horsesGone.js";
import { footVisit } from "../footVisit.js";
import { horseStay, studyOf } from "../study.js";

const stay = (horseId: string, joinedOn: string | null, leftOn: string | null, yardId = "North") =>
  horseStay({ horseId, yardId, joinedOn, leftOn });

test("left by the day, or not yet come; a move, a return and a horse without a stay are there", () => {
  const study = studyOf({
    visits: ["Left", "Stays", "Moved", "Back", "Unknown"].map((horseId) => footVisit({ horseId, visitDate: "2025-06-01" })),
    horses: [
      stay("Left", null, "2025-05-20"),
      stay("Left today", null, "2025-06-01"),
      stay("Stays", null, null),
      stay("Leaves later", null, "2025-06-02"),
      stay("Moved", null, "2025-05-01"),
      stay("Moved", "2025-05-01", null, "South"),
      stay("Back", null, "2025-02-01"),
      stay("Back", "2025-04-01", null),
      stay("Comes later", "2025-06-02", null),
    ],
  });
  expect([...horsesGone(study)].sort()).toEqual(["Comes later", "Left", "Left today"]);
});

test("without a visit and a day of review nobody is gone", () => {
  expect(horsesGone(studyOf({ horses: [stay("Left", null, "2020-01-01")] })).size).toBe(0);
});
