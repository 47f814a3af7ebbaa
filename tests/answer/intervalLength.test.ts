import { expect, test } from "vitest";
import { intervalLength } from "../../src/answer/intervalLength.js";
import { answered } from "./climateAnswer.js";
import { seasonHerd } from "./seasonHerd.js";

test("shod and bare apart; first visits have no interval", () => {
  const study = seasonHerd();
  const { tables, method } = answered(intervalLength(study));
  expect(tables[0]!.rows.map((row) => row["name"])).toEqual(["bare feet", "shod feet"]);
  const firsts = new Set(study.visits.map(({ horseId }) => horseId)).size * 4;
  expect([method.n, method.missing]).toEqual([study.visits.length - firsts, firsts]);
  // The interval was drawn without regard to thrush.
  for (const row of tables[0]!.rows) expect(Number(row["lower"]) < 1 && 1 < Number(row["upper"])).toBe(true);
});

test("one visit each gives no interval", () => {
  const study = seasonHerd();
  const firstDay = new Map<string, string>();
  for (const { horseId, visitDate } of study.visits)
    if (!firstDay.has(horseId) || visitDate < firstDay.get(horseId)!) firstDay.set(horseId, visitDate);
  const reply = intervalLength({
    ...study,
    visits: study.visits.filter(({ horseId, visitDate }) => firstDay.get(horseId) === visitDate),
  });
  expect(reply.kind === "not_enough_data" && reply.reason).toMatch(
    /no horses with bare feet, no horses with shod feet; 5 are needed/,
  );
});
