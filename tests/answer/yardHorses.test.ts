import { expect, test } from "vitest";
import { yardHorses } from "../../src/answer/yardHorses.js";
import { footVisit } from "../footVisit.js";
import { studyOf } from "../study.js";
import { dueHorses } from "./dueHorses.js";
import { reversed } from "./herd.js";

const base = dueHorses();
const study = {
  ...base,
  visits: [
    ...base.visits.filter(({ horseId }) => horseId !== "Ivy"),
    footVisit({ horseId: "Elm", visitDate: "2025-02-20", reason: "other", foot: "LH", thrushGrade: 3 }),
    footVisit({ horseId: "Elm", visitDate: "2025-02-20", reason: "other", foot: "RH", thrushGrade: 1 }),
    ...(["LF", "RF", "LH", "RH"] as const).map((foot) =>
      footVisit({ horseId: "Fern", visitDate: "2025-02-16", foot, thrushGrade: 1 }),
    ),
    footVisit({ horseId: "Dun", visitDate: "2025-01-20", foot: "RF", thrushGrade: 0 }),
    // After the day of the list: not used.
    footVisit({ horseId: "Dun", visitDate: "2025-03-02", foot: "RF", thrushGrade: 3 }),
  ],
};

test("a line a horse, the vet's first: last visit, worst frog, feet without a grade, next date", () => {
  const answer = yardHorses(study);
  expect(answer).toMatchObject({
    sentence:
      "On 1 March 2025 8 horses stand here, 7 of them seen. At the last visit of each, 2 horses had thrush of grade 1 or more and 1 horse a finding that is the vet's.",
    method: { n: 7, missing: 1 },
  });
  const rows = answer.kind === "answer" ? answer.tables[0]!.rows : [];
  expect(rows.map((row) => row["horse"])).toEqual(["Elm", "Ash", "Briar", "Cob", "Dun", "Fern", "Gale", "Hazel"]);
  expect(rows[0]).toEqual({
    horse: "Elm",
    vet: "now",
    seen: "20 Feb 2025",
    worst: "grade 3, near hind",
    ungraded: 2,
    due: "10 Mar 2025",
  });
  expect(rows[1]).toMatchObject({ vet: null, worst: null, ungraded: 4, due: "17 Feb 2025, 12 days over" });
  expect(rows[4]).toMatchObject({ worst: "grade 0", ungraded: 3 });
  expect(rows[5]).toMatchObject({ worst: "grade 1, all four", ungraded: 0 });
  expect(rows[7]).toEqual({ horse: "Hazel", vet: null, seen: null, worst: null, ungraded: null, due: "no routine visit yet" });
});

test("row order does not matter; nobody there, no answer", () => {
  expect(yardHorses(reversed(study))).toEqual(yardHorses(study));
  expect(yardHorses(studyOf())).toMatchObject({ kind: "not_enough_data" });
});
