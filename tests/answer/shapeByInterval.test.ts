import { expect, test } from "vitest";
import { shapeByInterval } from "../../src/answer/shapeByInterval.js";
import { dateOfDay } from "../../src/study/dateOfDay.js";
import type { FootVisit } from "../../src/study/FootVisit.js";
import { footVisit } from "../footVisit.js";
import { horseStay, studyOf } from "../study.js";

// Twelve horses of one foot, each seen after 35 and 70 days by turns, eleven times: flares at every third short and two of three long gaps.
const horses = Array.from({ length: 12 }, (_, k) => horseStay({ horseId: `h${k}`, shod: k < 6 ? "bare" : "all" }));
const visits = Array.from({ length: 12 }, (_, k): FootVisit[] => {
  let day = 20_000 + k;
  return Array.from({ length: 11 }, (_each, turn) => {
    const long = turn % 2 === 0;
    if (turn > 0) day += long ? 70 : 35;
    const flared = turn > 0 && (long ? (turn + k) % 3 !== 0 : (turn + k) % 3 === 0);
    return footVisit({
      ...{
        horseId: `h${k}`,
        visitDate: dateOfDay(day),
        stage: "before_trim",
        workDone: "trim",
        bars: "level",
        whiteLine: "tight",
      },
      ...{ shoeState: k < 6 ? "bare" : "tight", flareSite: flared ? ["toe"] : null },
    });
  });
}).flat();

test("shares by band as counted, odds by the week, shod and bare apart", () => {
  const answer = shapeByInterval(studyOf({ visits, horses }));
  if (answer.kind !== "answer") throw new Error(answer.reason);
  const expected = (long: boolean, from: number) => {
    const looks = Array.from({ length: 6 }, (_, k) => k + from).flatMap((k) =>
      Array.from({ length: 10 }, (_each, place) => place + 1)
        .filter((turn) => (turn % 2 === 0) === long)
        .map((turn) => (long ? (turn + k) % 3 !== 0 : (turn + k) % 3 === 0)),
    );
    return Math.round((100 * looks.filter(Boolean).length) / looks.length);
  };
  for (const [table, from] of [
    [answer.tables[1]!, 6],
    [answer.tables[2]!, 0],
  ] as const) {
    // prettier-ignore
    expect(table.rows.map(({ gap, looks }) => [gap, looks])).toEqual([["up to 6 weeks", 30], ["more than 8 weeks", 30]]); // prettier-ignore
    expect(String(table.rows[0]!["flare"])).toMatch(new RegExp(`^${expected(false, from)}% `));
    expect(String(table.rows[1]!["flare"])).toMatch(new RegExp(`^${expected(true, from)}% `));
  }
  // Two gaps only, so the odds ratio of five weeks is that of the two-by-two table, and a week's its fifth root.
  const flare = answer.tables[0]!.rows.find(({ shoeing, finding }) => shoeing === "bare" && finding === "flare")!;
  const [short, long] = [expected(false, 0) / 100, expected(true, 0) / 100];
  expect(Number(flare["estimate"])).toBeCloseTo((long / (1 - long) / (short / (1 - short))) ** 0.2, 1);
  expect(answer.sentence).toMatch(
    /^With each week more since the last trim went higher odds, in feet going shod of flare \(1\.32 times\); in feet going bare of flare \(1\.32 times\): 120 looks at feet of 12 horses\.$/,
  );
  expect(answer.cautions[0]).toMatch(/^This is no advice to change an interval/);
});

test("few horses give no comparison", () => {
  expect(shapeByInterval(studyOf({ visits: visits.slice(0, 33), horses }))).toMatchObject({
    kind: "not_enough_data",
    reason: expect.stringMatching(/3 horses; fewer than 5/) as string,
  });
});
