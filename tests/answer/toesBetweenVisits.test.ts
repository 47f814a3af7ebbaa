import { expect, test } from "vitest";
import { toesBetweenVisits } from "../../src/answer/toesBetweenVisits.js";
import type { FootVisit } from "../../src/study/FootVisit.js";
import { footVisit } from "../footVisit.js";
import { horseStay, studyOf } from "../study.js";

// Twelve shod horses trimmed every 40 days to 80 mm; toes gain 8 mm and a little by turns, those of h0 16 mm.
const days = ["2025-01-06", "2025-02-15", "2025-03-27", "2025-05-06", "2025-06-15"];
const visits = Array.from({ length: 12 }, (_, k): FootVisit[] =>
  days.flatMap((visitDate, turn) => {
    const gain = turn === 0 ? 10 : (k === 0 ? 16 : 8) + ((turn + k) % 3) / 5;
    const cells = { horseId: `h${k}`, visitDate, workDone: "shoe" } as const;
    return [
      footVisit({ ...cells, stage: "before_trim", toeLengthMm: 80 + gain }),
      footVisit({ ...cells, stage: "after_trim", toeLengthMm: 80 }),
    ];
  }),
).flat();
const horses = Array.from({ length: 12 }, (_, k) => horseStay({ horseId: `h${k}`, shod: "all" }));

test("the horse whose toe runs away is named, shod horses by themselves", () => {
  const answer = toesBetweenVisits(studyOf({ visits, horses }));
  if (answer.kind !== "answer") throw new Error(answer.reason);
  // (11 x 8 + 16) / 12 = 8.67 and 0.2 for the turns, over 40 days: 0.22.
  expect(answer.sentence).toBe(
    "From after one trim to before the next, toes gained 0.22 mm a day shod. Clearly more than others going as they do: h0.",
  );
  expect(answer.tables[1]!.rows[0]).toMatchObject({ name: "h0", n: 4, more: "yes" });
  expect(answer.tables[1]!.rows.filter(({ more }) => more === "yes")).toHaveLength(1);
  expect(answer.tables[0]!.rows.at(-1)).toMatchObject({ lower: 0.202, upper: 0.31 });
  expect(answer.cautions.join(" ")).toContain("no advice to change an interval");
});

test("without toes before and after the trim it cannot be said", () => {
  const after = visits.filter(({ stage }) => stage === "after_trim");
  expect(toesBetweenVisits(studyOf({ visits: after, horses }))).toMatchObject({ kind: "not_enough_data" });
});

test("horses that differ by no more than the turns do are not listed, and the method says so", () => {
  // Gains of 8, 8.2 and 8.4 mm come to each horse by turns; h0 is left out.
  const alike = visits.filter(({ horseId }) => horseId !== "h0");
  const answer = toesBetweenVisits(studyOf({ visits: alike, horses }));
  if (answer.kind !== "answer") throw new Error(answer.reason);
  expect(answer.tables.map(({ caption }) => caption).filter((caption) => caption.startsWith("Horses going"))).toEqual([]);
  expect(answer.method.text).toContain("Horses going shod differ by no more than chance and are not listed.");
});
