import { expect, test } from "vitest";
import { keepingTheInterval } from "../../src/answer/keepingTheInterval.js";
import { herd, renamed, reversed } from "./herd.js";

const seen = (...days: readonly string[]) => days.map((day): [string, number, number] => [day, 0, 0]);
// By hand, 42 days agreed, 7 either way, review on the last visit day, 2025-04-15.
//   A 42 kept, 50 late, then 7 open     B 50 late, 49 kept, open 0        C 35 kept, 55 late, 9 open
//   D 34 early, 65 open and 23 over     E 50 late, 49 kept, open 0
// Days within: A 42 + 42 + 7 of 99; B 42 + 42 of 99; C 35 + 42 + 9 of 99; D 34 + 42 of 99; E 42 + 42 of 99: 421 of 495.
const study = herd({
  A: seen("2025-01-06", "2025-02-17", "2025-04-08"),
  B: seen("2025-01-06", "2025-02-25", "2025-04-15"),
  C: seen("2025-01-06", "2025-02-10", "2025-04-06"),
  D: seen("2025-01-06", "2025-02-09"),
  E: seen("2025-01-06", "2025-02-25", "2025-04-15"),
});

test("kept, late, early, and the share of days within the interval", () => {
  const answer = keepingTheInterval(study);
  expect(answer).toMatchObject({ kind: "answer", method: { n: 9, missing: 0 } });
  if (answer.kind !== "answer") return;
  expect(answer.sentence).toMatch(
    /^Of 9 intervals that ended, 4 were kept within 7 days of the date: 44% \(95% interval \d+% to \d+%\); 4 ran late and 1 came early\. Horses stood within their agreed interval on 85% \(95% interval \d+% to \d+%\) of their days, and no horses ran late more than once\.$/,
  );
  expect(421 / 495).toBeCloseTo(0.85, 2);
  const ends = answer.tables.at(-1)!.rows.map(({ how, intervals }) => [how, intervals]);
  expect(ends).toEqual([
    ["kept, within 7 days of the date", 4],
    ["late", 4],
    ["early", 1],
    ["lost to follow-up: more than 400 days", 0],
    ["ended, but no interval had been agreed", 0],
    ["still open, date not more than the tolerance past or none agreed", 4],
    ["still open and over", 1],
    ["cut short: the horse left", 0],
    ["cut short: the horse started anew", 0],
    ["all intervals", 14],
    ["of these, begun at one yard and ended at another", 0],
    ["of these, with a visit in between that was not routine", 0],
    ["of these, begun or ended by a visit without a reason, taken as routine", 0],
  ]);
});

test("yards stand by name and get no share with fewer horses than the minimum", () => {
  const answer = keepingTheInterval(study);
  const [yards] = answer.kind === "answer" ? answer.tables : [];
  expect(yards!.rows.map(({ yardId, horses, kept, late, early, within }) => [yardId, horses, kept, late, early, within])).toEqual(
    [
      ["North", 3, 3, 3, 0, null],
      ["South", 2, 1, 1, 1, null],
    ],
  );
  expect(yards!.greyed!.map(({ row }) => row)).toEqual([0, 1]);
  const low = keepingTheInterval({ ...study, settings: { ...study.settings, minimumHorses: 3 } });
  // North by hand: 91 + 84 + 86 of 297.
  expect(low.kind === "answer" && low.tables[0]!.rows[0]!["within"]).toBeCloseTo(261 / 297, 12);
});

test("horses late again, and how often late follows late", () => {
  const answer = keepingTheInterval(
    herd({
      A: seen("2025-01-06", "2025-02-25", "2025-04-20", "2025-06-09"),
      B: seen("2025-01-06", "2025-02-17", "2025-03-31", "2025-06-09"),
      C: seen("2025-01-06", "2025-02-17"),
      D: seen("2025-01-06", "2025-02-17"),
      E: seen("2025-01-06", "2025-02-17"),
    }),
  );
  if (answer.kind !== "answer") throw new Error(answer.reason);
  // A 50, 54, 50: late three times, most 12 days. B 42, 42, 70: once. C, D, E are 112 days after their last visit, 70 over.
  expect(answer.tables[1]!.rows).toEqual([{ horse: "A", yard: "North", late: 3, ended: 3, most: 12, overNow: null }]);
  expect(answer.tables[2]!.rows.map(({ late, n }) => [late, n])).toEqual([
    [2, 2],
    [1, 2],
  ]);
  expect(answer.sentence).toContain("and 1 horse ran late more than once.");
});

test("row order and names of horses do not matter", () => {
  expect(keepingTheInterval(reversed(study))).toEqual(keepingTheInterval(study));
  const [one, other] = [keepingTheInterval(study), keepingTheInterval(renamed(study))];
  expect(other.kind === "answer" && other.sentence).toBe(one.kind === "answer" && one.sentence);
});

test("an empty study and four horses are not enough", () => {
  expect(keepingTheInterval(herd({}))).toMatchObject({
    kind: "not_enough_data",
    reason: expect.stringMatching(/^No horses have/) as string,
  });
  const small = { ...study, visits: study.visits.filter(({ horseId }) => horseId !== "E") };
  expect(keepingTheInterval(small)).toMatchObject({
    reason: "4 horses have two routine visits with an agreed interval between them; fewer than 5 give no share.",
  });
});
