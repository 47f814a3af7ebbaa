import { expect, test } from "vitest";
import { whereItVaries } from "../../src/answer/whereItVaries.js";
import { renamed, reversed, herd } from "./herd.js";
import { twoYards } from "./twoYards.js";

const study = twoYards([5, 5, 1, 1, 5, 1], [5, 1, 5, 1, 1, 5]);

test("shares of the variation add up to all of it, and the median factor follows from the spread", () => {
  const answer = whereItVaries(study);
  if (answer.kind !== "answer") throw new Error(answer.reason);
  expect(answer.method).toMatchObject({ n: 72, missing: 0 });
  const rows = answer.tables[0]!.rows;
  expect(rows.map(({ between, count }) => [between, count])).toEqual([
    ["Yards", 2],
    ["Horses", 12],
    ["Feet of one horse", 24],
    ["Looks at one foot", null],
  ]);
  expect(rows.reduce((sum, row) => sum + (row["share"] as number), 0)).toBeCloseTo(1, 12);
  const horse = rows[1]!;
  // Larsen & Merlo: exp(sqrt(2) x SD x 0.6744898), the upper quartile of a standard normal.
  expect(horse["medianOddsRatio"]).toBeCloseTo(Math.exp(Math.SQRT2 * 0.6744897501960817 * (horse["sd"] as number)), 9);
  // A look has the variance of the logistic distribution, pi squared over 3.
  expect(rows[3]!["sd"]).toBeCloseTo(Math.PI / Math.sqrt(3), 12);
});

test("where half the horses nearly always have thrush and half nearly never, horses hold more of the variation than anything but the single look", () => {
  const answer = whereItVaries(study);
  expect(answer.kind === "answer" && answer.sentence).toMatch(
    /^On the scale of log odds horses account for \d+% of the variation; \d+% lies between looks at one foot, and yards and feet of one horse differ by no more than chance would make them\. Between two horses alike in all else the odds of thrush differ by a median factor of \d+\.\d \(95% interval \d+\.\d to \d+\.\d\)\.$/,
  );
});

test("with one yard, yards are left out and it is said", () => {
  const answer = whereItVaries({ ...study, horses: study.horses.map((stay) => ({ ...stay, yardId: "North" })) });
  if (answer.kind !== "answer") throw new Error(answer.reason);
  expect(answer.tables[0]!.rows.map(({ between }) => between)).toEqual(["Horses", "Feet of one horse", "Looks at one foot"]);
  expect(answer.method.text).toContain("Yards left out: ");
});

test("an observer who finds thrush more often at the same horses has the higher odds", () => {
  const visits = study.visits.map((visit, i) => {
    // Turn about, so that neither sees one kind of foot only.
    const observerId = Math.floor((i + 1) / 2) % 2 === 0 ? "K" : "M";
    // M calls two in three of the clear feet thrush, besides those that have it.
    const more = observerId === "M" && visit.thrushGrade === 0 && i % 3 !== 2;
    return { ...visit, observerId, thrushGrade: more ? 1 : visit.thrushGrade };
  });
  const answer = whereItVaries({ ...study, visits });
  if (answer.kind !== "answer") throw new Error(answer.reason);
  const [reference, other] = answer.tables[1]!.rows;
  expect(reference).toMatchObject({ observer: "K", looks: 36, horses: 12, ratio: 1 });
  expect(other).toMatchObject({ observer: "M", looks: 36, horses: 12 });
  expect(other!["ratio"]).toBeGreaterThan(1);
});

test("row order and names of horses do not matter", () => {
  expect(whereItVaries(reversed(study))).toEqual(whereItVaries(study));
  expect(whereItVaries(renamed(study))).toEqual(whereItVaries(study));
});

test("nothing, four horses, and no thrush at all are not enough", () => {
  expect(whereItVaries(herd({}))).toMatchObject({
    reason: "No horses have a graded frog at a known yard; fewer than 5 give no spread.",
  });
  const few = { ...study, visits: study.visits.filter(({ horseId }) => horseId < "A5") };
  expect(whereItVaries(few)).toMatchObject({ reason: expect.stringMatching(/^4 horses have/) as string });
  expect(whereItVaries(twoYards([0, 0, 0, 0, 0, 0], [0, 0, 0, 0, 0, 0]))).toMatchObject({
    reason: expect.stringMatching(/^The spread between horses cannot be measured: /) as string,
  });
});
