import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { clopperPearsonInterval } from "../../src/estimate/clopperPearsonInterval.js";
import { clusteredProportion } from "../../src/estimate/clusteredProportion.js";
import { prevalence } from "../../src/estimate/prevalence.js";
import type { PrevalenceRow } from "../../src/estimate/PrevalenceRow.js";
import { wilsonInterval } from "../../src/estimate/wilsonInterval.js";
import { faultCode } from "./faultCode.js";
import { expectNear, referenceRows } from "./reference.js";

const horse = (horseId: string, marks: string, yardId: string | null = null): PrevalenceRow[] =>
  Array.from(marks, (mark) => ({ case: mark === "?" ? null : mark === "1", horseId, yardId }));

const nested = referenceRows("sim-nested-feet.csv").map((row): PrevalenceRow => ({
  case: row["y"] === 1,
  horseId: String(row["horse"]),
  yardId: String(row["yard"]),
}));

// R 4.2.2, survey 4.1-1: svydesign(ids = ~yard, weights = ~1), svyciprop(~y, method = "logit", df = 23); 656 simulated feet of 164 horses on
// 24 yards.
test("simulated feet in horses on yards, clustered by yard", () => {
  const { footVisit } = prevalence(nested);
  expectNear([footVisit.estimate, footVisit.lower, footVisit.upper], [0.34451219512, 0.2556577901, 0.4457545134], 1e-9);
  // The clustered error over the binomial one, squared: 0.04643967803 against 0.34451219512 x 0.65548780488 / 656.
  expectNear([footVisit.designEffect], [(0.04643967803 ** 2 * 656) / (0.34451219512 * 0.65548780488)], 1e-8);
  expect([footVisit.clusteredBy, footVisit.clusters, footVisit.n, footVisit.cases]).toEqual(["yard", 24, 656, 226]);
});

test("and clustered by horse, when yards are too few to be told apart", () => {
  const { footVisit, horse: horses } = prevalence(nested, { minimumYards: 25 });
  // Taylor error by horse, R survey: 0.0248706522.
  expectNear([footVisit.designEffect], [(0.0248706522 ** 2 * 656) / (0.34451219512 * 0.65548780488)], 1e-8);
  expect([footVisit.clusteredBy, footVisit.clusters, horses.clusteredBy]).toEqual(["horse", 164, null]);
  expect(footVisit.note).toMatch(/24 yards are too few/);
});

describe("four horses worked by hand: feet 6 of 16, horses 3 of 4", () => {
  const rows = [...horse("A", "1011"), ...horse("B", "0000"), ...horse("C", "0010"), ...horse("D", "0011")];
  const { footVisit, horse: horses, yard, visit } = prevalence(rows);

  test("feet are clustered by horse", () => {
    const own = clusteredProportion([3, 0, 1, 2].map((cases) => ({ cases, n: 4 })));
    expect([footVisit.cases, footVisit.n, footVisit.estimate]).toEqual([6, 16, 0.375]);
    expect([footVisit.lower, footVisit.upper]).toEqual([own.logitT.lower, own.logitT.upper]);
    // Independent feet would give 0.1848 to 0.6136.
    expect(footVisit.lower! < 0.1848 && footVisit.upper! > 0.6136).toBe(true);
    expectNear([footVisit.icc], [0.2], 1e-12);
  });

  test("a horse with any case foot is a case", () => {
    const { lower, upper } = wilsonInterval(3, 4);
    expect([horses.cases, horses.n, horses.lower, horses.upper]).toEqual([3, 4, lower, upper]);
  });

  test("without yards and dates there is no yard prevalence and no visit prevalence", () => {
    expect([yard.estimate, yard.n, yard.lower]).toEqual([null, 0, null]);
    expect(yard.note).toMatch(/not known for any yard/);
    expect(visit).toBeNull();
  });
});

describe("missing findings", () => {
  const rows = [
    ...horse("A", "1?00", "home"),
    ...horse("B", "0?00", "home"),
    ...horse("C", "????", "hill"),
    ...horse("D", "0000", "hill"),
  ];
  const { footVisit, horse: horses, yard } = prevalence(rows);

  test("are counted in every unit and never read as clear", () => {
    expect([footVisit.n, footVisit.missing]).toEqual([10, 6]);
    expect([horses.n, horses.missing, horses.cases, horses.partlyKnown]).toEqual([3, 1, 1, 1]);
    expect([yard.n, yard.missing, yard.cases, yard.partlyKnown]).toEqual([2, 0, 1, 1]);
  });

  test("when nothing is known there is no proportion", () => {
    const none = prevalence(horse("A", "??", "home"));
    for (const level of [none.footVisit, none.horse, none.yard]) {
      expect([level.estimate, level.lower, level.upper, level.n]).toEqual([null, null, null, 0]);
      expect(level.note).toMatch(/not known/);
    }
    expect(prevalence([]).footVisit.estimate).toBeNull();
  });
});

describe("units", () => {
  test("visits are a horse on a day", () => {
    const on = (visitDate: string, rows: PrevalenceRow[]) => rows.map((row) => ({ ...row, visitDate }));
    const rows = [
      ...on("2025-01-10", horse("A", "10")),
      ...on("2025-03-01", horse("A", "00")),
      ...on("2025-03-01", horse("B", "00")),
    ];
    const { visit } = prevalence(rows);
    expect([visit!.cases, visit!.n, visit!.clusteredBy, visit!.clusters]).toEqual([1, 3, "horse", 2]);
  });

  test("a horse that moved counts in the yard that holds most of its rows", () => {
    const ten = Array.from({ length: 10 }, (_, i) => horse(`H${i}`, i < 4 ? "10" : "00", `Y${i}`)).flat();
    const moved = [...horse("M", "1", "Y0"), ...horse("M", "000", "Y9")];
    const { horse: horses, footVisit } = prevalence([...ten, ...moved]);
    const own = clusteredProportion([1, 1, 1, 1, 0, 0, 0, 0, 0].map((cases) => ({ cases, n: 1 })).concat({ cases: 1, n: 2 }));
    expect([horses.lower, horses.upper, horses.clusters]).toEqual([own.logitT.lower, own.logitT.upper, 10]);
    expect(footVisit.clusters).toBe(10);
  });

  test("horses of unknown yard are clusters of their own among yards, and the yard level says so", () => {
    const ten = Array.from({ length: 10 }, (_, i) => horse(`H${i}`, i < 4 ? "10" : "00", `Y${i}`)).flat();
    const { footVisit, yard } = prevalence([...ten, ...horse("S", "11"), ...horse("T", "00")]);
    expect(footVisit.clusters).toBe(12);
    expect([yard.n, yard.note]).toEqual([10, "4 rows belong to no known yard."]);
  });

  test("one yard says that the limits hold for it alone", () => {
    const { footVisit, yard } = prevalence([...horse("A", "10", "home"), ...horse("B", "00", "home")]);
    expect(footVisit.note).toMatch(/hold for it alone/);
    expect([yard.cases, yard.n]).toEqual([1, 1]);
  });

  test("no case at all still has a width", () => {
    const { footVisit, horse: horses } = prevalence(["A", "B", "C"].flatMap((name) => horse(name, "0000", "home")));
    expect([footVisit.lower, footVisit.upper]).toEqual([0, clopperPearsonInterval(0, 3).upper]);
    expect(footVisit.note).toMatch(/None of the 12/);
    expect(horses.upper).toBe(wilsonInterval(0, 3).upper);
  });
});

test("row order does not matter; parts add up; limits hold their estimate; prevalence rises from foot to yard", () => {
  const row = fc.record({
    case: fc.option(fc.boolean()),
    horseId: fc.integer({ min: 1, max: 15 }).map((i) => `H${i}`),
    yardId: fc.option(fc.integer({ min: 1, max: 12 }).map((i) => `Y${i}`)),
    visitDate: fc.constantFrom("2025-01-01", "2025-02-01"),
  });
  fc.assert(
    fc.property(fc.array(row, { maxLength: 60 }), fc.integer({ min: 2, max: 6 }), (rows, minimumYards) => {
      const one = prevalence(rows, { minimumYards });
      const other = prevalence([...rows].reverse(), { minimumYards });
      expect(one.footVisit.n + one.footVisit.missing).toBe(rows.length);
      expect(one.horse.n + one.horse.missing).toBe(new Set(rows.map((r) => r.horseId)).size);
      for (const unit of ["footVisit", "visit", "horse", "yard"] as const) {
        const [a, b] = [one[unit], other[unit]];
        expect([a?.cases, a?.n, a?.missing, a?.clusters]).toEqual([b?.cases, b?.n, b?.missing, b?.clusters]);
        if (typeof a?.lower !== "number" || a.upper === null) continue;
        expectNear([a.lower, a.upper], [b!.lower!, b!.upper!], 1e-9);
        expect(0 <= a.lower && a.lower <= a.estimate! && a.estimate! <= a.upper && a.upper <= 1).toBe(true);
      }
    }),
  );
});

test("a level that is no level is refused", () => {
  expect(faultCode(() => prevalence([], { level: 95 }))).toBe("out_of_range");
  expect(faultCode(() => prevalence([], { minimumYards: 2.5 }))).toBe("not_a_count");
});
