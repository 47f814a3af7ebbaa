import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { doubleScores } from "../../src/derive/doubleScores.js";
import type { FootCase } from "../../src/derive/FootCase.js";
import { horseCases } from "../../src/derive/horseCases.js";
import { rainBeforeVisits } from "../../src/derive/rainBeforeVisits.js";
import { thrushCases } from "../../src/derive/thrushCases.js";
import { trimIntervals } from "../../src/derive/trimIntervals.js";
import { grouped } from "../../src/study/grouped.js";
import type { Study } from "../../src/study/Study.js";
import type { DistrictTruth } from "../../src/simulate/district/districtTruth.js";
import { demoStudy } from "./demoStudy.js";

const study: Study = await demoStudy();
const truth = JSON.parse(readFileSync(`${import.meta.dirname}/../../data-demo/truth.json`, "utf8")) as DistrictTruth;
const cases = thrushCases(study).filter(({ thrush }) => thrush !== null);
const share = (rows: readonly FootCase[]) => rows.filter(({ thrush }) => thrush).length / rows.length;

/** Mantel-Haenszel odds ratio by the textbook formula, sum(ad/n) over sum(bc/n). */
function pooledOddsRatio(
  rows: readonly FootCase[],
  stratum: (row: FootCase) => string,
  exposed: (row: FootCase) => boolean,
): number {
  let [above, below] = [0, 0];
  for (const of of grouped(rows, stratum).values()) {
    const count = (isExposed: boolean, isCase: boolean) =>
      of.filter((row) => exposed(row) === isExposed && row.thrush === isCase).length;
    above += (count(true, true) * count(false, false)) / of.length;
    below += (count(true, false) * count(false, true)) / of.length;
  }
  return above / below;
}

test("figures a practitioner would believe: a foot in five, a horse in two, worse in winter", () => {
  expect(share(cases)).toBeGreaterThan(0.15);
  expect(share(cases)).toBeLessThan(0.3);
  const horses = horseCases(cases);
  const horseShare = horses.filter(({ thrush }) => thrush).length / horses.length;
  expect(horseShare).toBeGreaterThan(0.35);
  expect(horseShare).toBeLessThan(0.6);
  const winter = cases.filter(({ monthOfYear }) => [12, 1, 2].includes(monthOfYear));
  const summer = cases.filter(({ monthOfYear }) => [5, 6, 7].includes(monthOfYear));
  expect(share(winter)).toBeGreaterThan(share(summer) * 1.3);
  for (const month of grouped(cases, (row) => row.month).values()) {
    expect(share(month)).toBeGreaterThan(0.08);
    expect(share(month)).toBeLessThan(0.4);
  }
});

// Planted odds ratio of hind feet exp(0.55) = 1.73. Within horse and day the pairing holds everything else; 0.3 allows three standard errors of 0.09 on
// the log scale.
test("hind feet are worse than fore feet of the same horse on the same day", () => {
  const ratio = pooledOddsRatio(
    cases,
    (row) => `${row.horseId} ${row.visitDate}`,
    (row) => row.end === "hind",
  );
  expect(Math.abs(Math.log(ratio) - truth.effects.hind)).toBeLessThan(0.3);
});

test("within a yard and a month of the year, visits after more rain than usual have more thrush", () => {
  const rain = new Map(rainBeforeVisits(study).map((row) => [`${row.horseId} ${row.visitDate}`, row["rainMm14d"] ?? null]));
  const rainOf = (row: FootCase) => rain.get(`${row.horseId} ${row.visitDate}`) ?? null;
  const known = cases.filter((row) => rainOf(row) !== null);
  const stratum = (row: FootCase) => `${row.yardId ?? ""} ${row.monthOfYear}`;
  const medians = new Map(
    [...grouped(known, stratum)].map(([key, rows]) => [
      key,
      rows.map((row) => rainOf(row)!).sort((a, b) => a - b)[Math.floor(rows.length / 2)]!,
    ]),
  );
  const ratio = pooledOddsRatio(known, stratum, (row) => rainOf(row)! > medians.get(stratum(row))!);
  expect(ratio).toBeGreaterThan(1.1);
  expect(ratio).toBeLessThan(2.2);
});

test("the two yards that run late are the two latest, by the days that were planted", () => {
  const gaps = trimIntervals(study).filter(({ daysLate }) => daysLate !== null);
  const late = [...grouped(gaps, ({ yardId }) => yardId ?? "")].map(([yardId, rows]) => ({
    yardId,
    mean: rows.reduce((sum, { daysLate }) => sum + daysLate!, 0) / rows.length,
    kept: rows.filter(({ status }) => status === "kept").length / rows.length,
  }));
  late.sort((a, b) => b.mean - a.mean);
  const planted = truth.yards.filter(({ runsLate }) => runsLate).map(({ yardId }) => yardId);
  expect(
    late
      .slice(0, 2)
      .map(({ yardId }) => yardId)
      .sort(),
  ).toEqual([...planted].sort());
  expect(late[1]!.mean - late[2]!.mean).toBeGreaterThan(5);
  expect(late.slice(2).every(({ kept }) => kept > 0.75)).toBe(true);
  expect(late.slice(0, 2).every(({ kept }) => kept < 0.5)).toBe(true);
});

test("the fates of single horses come out as they were planted", () => {
  const special = (word: string) => truth.horses.filter((horse) => horse.special.includes(word)).map(({ horseId }) => horseId);
  const gaps = trimIntervals(study);
  const [lost] = special("lost");
  expect(gaps.filter(({ horseId }) => horseId === lost)).toMatchObject([{ status: "lost", to: null, censoredBy: "as_of" }]);
  for (const horseId of special("leaves")) {
    const last = gaps.filter((gap) => gap.horseId === horseId).at(-1);
    expect(last, horseId).toMatchObject({ to: null, censoredBy: "left", overdueDays: null });
  }
  const [moved] = special("moves");
  const yards = cases.filter(({ horseId }) => horseId === moved).map(({ yardId }) => yardId);
  expect([...new Set(yards)]).toEqual(["Sallowmere", "Brackloft"]);
  for (const horseId of special("joins")) {
    const first = study.visits.find((visit) => visit.horseId === horseId);
    expect(first, horseId).toMatchObject({ reason: "new_horse" });
  }
  const awkward = special("awkward hinds");
  const refused = study.visits.filter(({ notExaminedReason }) => notExaminedReason === "would not give its hind feet");
  expect(new Set(refused.map(({ horseId }) => horseId))).toEqual(new Set(awkward));
});

test("a shoe is lost from shod feet only, and reasons for visits and for feet not seen are all there", () => {
  const lostShoe = study.visits.filter(({ reason }) => reason === "lost_shoe");
  const bare = new Set(study.horses.filter(({ shod }) => shod === "bare").map(({ horseId }) => horseId));
  expect(lostShoe.length).toBeGreaterThan(30);
  expect(lostShoe.filter(({ horseId }) => bare.has(horseId))).toEqual([]);
  const reasons = new Set(study.visits.map(({ reason }) => reason));
  expect(reasons).toEqual(new Set(["routine", "new_horse", "lost_shoe", "lame", "follow_up", "other", null]));
  expect(new Set(study.visits.map(({ stage }) => stage))).toEqual(new Set(["before_trim", "after_trim", "single", null]));
});

test("two observers graded some feet on the same day and mostly agree; M is not milder than K", () => {
  const pairs = doubleScores(study.visits);
  expect(pairs.length).toBeGreaterThan(40);
  const agree = pairs.filter(({ firstGrade, secondGrade }) => firstGrade === secondGrade).length / pairs.length;
  expect(agree).toBeGreaterThan(0.65);
  expect(agree).toBeLessThan(1);
  const sum = (of: (pair: (typeof pairs)[number]) => number) => pairs.reduce((total, pair) => total + of(pair), 0);
  expect(pairs.every(({ firstObserverId, secondObserverId }) => firstObserverId === "K" && secondObserverId === "M")).toBe(true);
  expect(sum(({ secondGrade }) => secondGrade)).toBeGreaterThanOrEqual(sum(({ firstGrade }) => firstGrade));
});
