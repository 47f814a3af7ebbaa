import { expect, test } from "vitest";
import { heelsRunningUnder } from "../../src/answer/heelsRunningUnder.js";
import type { FootVisit } from "../../src/study/FootVisit.js";
import { footVisit } from "../footVisit.js";
import { studyOf } from "../study.js";

const days = ["2025-01-06", "2025-03-07", "2025-05-06", "2025-07-05", "2025-09-03", "2025-11-02"];
const noise = [0.3, -0.2, 0.1, -0.3, 0.2, -0.1];
// Ten horses; the heel of h0 drops by 6 degrees over the year, the others stay.
const visits = Array.from({ length: 10 }, (_, k): FootVisit[] =>
  days.map((visitDate, turn) => {
    const gap = 3 + (k % 3) / 2 + noise[(turn + k) % 6]! + (k === 0 ? (6 * turn) / 5 : 0);
    return footVisit({ horseId: `h${k}`, visitDate, stage: "after_trim", toeAngleDeg: 50, heelAngleDeg: 50 - gap });
  }),
).flat();
// Two observers half a degree apart by turns.
const twice = Array.from({ length: 10 }, (_, k): FootVisit[] => [
  footVisit({
    horseId: `h${k}`,
    foot: "RF",
    visitDate: "2025-01-06",
    stage: "before_trim",
    observerId: "K",
    toeAngleDeg: 50,
    heelAngleDeg: 46,
  }),
  footVisit({
    horseId: `h${k}`,
    foot: "RF",
    visitDate: "2025-01-06",
    stage: "single",
    observerId: "M",
    toeAngleDeg: 50,
    heelAngleDeg: k % 2 === 0 ? 46.5 : 45.5,
  }),
]).flat();

test("the foot whose gap grows beyond reading error is named, and only it", () => {
  const answer = heelsRunningUnder(studyOf({ visits: [...visits, ...twice] }));
  if (answer.kind !== "answer") throw new Error(answer.reason);
  expect(answer.sentence).toMatch(
    /^Heels ran under in 1 foot: h0 near fore \(\+[456]\.\d degrees\)\. Measured last, the gap was 5 degrees or more in 1 of 10 feet\.$/,
  );
  expect(answer.tables[0]!.rows[0]).toMatchObject({ horseId: "h0", real: "yes" });
  expect(answer.tables[0]!.rows.filter(({ real }) => real === "yes")).toHaveLength(1);
  expect(answer.tables[1]!.rows[0]).toMatchObject({ definition: "toe angle minus heel angle; larger is a lower heel" });
});

test("without repeated measurement nothing is flagged, and it is said", () => {
  const answer = heelsRunningUnder(studyOf({ visits }));
  if (answer.kind !== "answer") throw new Error(answer.reason);
  expect(answer.sentence).toMatch(/^The error of reading these angles is not known here/);
  expect(answer.tables[0]!.rows.every(({ real }) => real === "not known")).toBe(true);
});

test("two days are no trend", () => {
  expect(heelsRunningUnder(studyOf({ visits: visits.filter(({ visitDate }) => visitDate < "2025-04-01") }))).toMatchObject({
    kind: "not_enough_data",
  });
});
