import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { footShapes } from "../../src/derive/footShapes.js";
import { frontHindShape } from "../../src/derive/frontHindShape.js";
import { markGrowth } from "../../src/derive/markGrowth.js";
import { markTimes } from "../../src/derive/markTimes.js";
import { markTracks } from "../../src/derive/markTracks.js";
import { repeatedMeasures } from "../../src/derive/repeatedMeasures.js";
import { unevenPairs } from "../../src/derive/unevenPairs.js";
import { standardErrorOfMeasurement } from "../../src/estimate/standardErrorOfMeasurement.js";
import type { DistrictTruth } from "../../src/simulate/district/districtTruth.js";
import { dayNumber } from "../../src/study/dayNumber.js";
import type { FootVisit } from "../../src/study/FootVisit.js";
import { grouped } from "../../src/study/grouped.js";
import type { Study } from "../../src/study/Study.js";
import { visitColumns } from "../../src/study/visitColumns.js";
import { fieldName } from "../../src/study/fieldName.js";
import { demoStudy } from "./demoStudy.js";

const study: Study = await demoStudy();
const truth = JSON.parse(readFileSync(`${import.meta.dirname}/../../data-demo/truth.json`, "utf8")) as DistrictTruth;
const known = (values: readonly (number | null)[]) => values.filter((value) => value !== null);
const mean = (values: readonly (number | null)[]) => known(values).reduce((sum, value) => sum + value, 0) / known(values).length;

// Stachurska A et al. 2008, Arch Tierz 51:531: width is what tells fore from hind, fore wider. Souza AF et al. 2016, Arq Bras Med Vet Zootec
// 68:825: hinds narrower in horses, mules and donkeys.
test("fore feet are rounder and wider than hind feet of the same horse", () => {
  const rows = frontHindShape(study.visits).filter(({ shapeIndexDifference }) => shapeIndexDifference !== null);
  expect(rows.length).toBeGreaterThan(400);
  expect(rows.filter(({ shapeIndexDifference }) => shapeIndexDifference! > 0).length / rows.length).toBeGreaterThan(0.95);
  expect(mean(rows.map(({ widthDifferenceMm }) => widthDifferenceMm))).toBeGreaterThan(4);
});

// Same source: toe to heel about 2:1 in front and behind.
test("toe to heel is about 2:1 in front and behind", () => {
  for (const end of ["fore", "hind"]) {
    const ratios = footShapes(study).filter((row) => row.end === end);
    expect(Math.abs(mean(ratios.map(({ toeHeelRatio }) => toeHeelRatio)) - 2)).toBeLessThan(0.3);
  }
});

// Common practice, no source: a wall that flares lies flatter than the wall across from it; the outer wall lies flatter anyway.
test("the flared side has the smaller angle to the ground", () => {
  const angles = (site: "medial" | "lateral" | null) => {
    const rows = study.visits.filter(({ flareSite, stage }) => {
      if (stage === "after_trim") return false;
      return site === null
        ? flareSite === null
        : flareSite?.includes(site) && !flareSite.includes(site === "medial" ? "lateral" : "medial");
    });
    return rows.flatMap(({ lateralWallAngleDeg: lateral, medialWallAngleDeg: medial }) =>
      lateral === null || medial === null ? [] : [lateral - medial],
    );
  };
  expect(angles("lateral").every((difference) => difference < 0)).toBe(true);
  expect(angles("medial").filter((difference) => difference > 0).length / angles("medial").length).toBeGreaterThan(0.9);
  expect(mean(angles("lateral"))).toBeLessThan(mean(angles(null)) - 3);
});

// Common practice, no source: a scar from the coronary band travels down until it is trimmed away, it never moves up. Rates 0.20-0.31 mm a day:
// Reilly JD et al. 1998, Equine Vet J Suppl 26:51 (ponies, 0.202) and Kolstrung R et al. 2012, Med Weter 68:426 (mares, 0.31). Marks are read to
// a millimetre with an error (SD 0.8 mm), hence 3 mm.
test("abscess tracks travel down at the rate of growth", () => {
  const marks = study.visits.filter(({ markKind }) => markKind === "abscess_track");
  const bursts = new Map(
    truth.horses.flatMap((horse) => horse.bursts.map(({ foot, burstOn }) => [`${horse.horseId} ${foot}`, burstOn])),
  );
  expect(marks.length).toBeGreaterThan(20);
  for (const { horseId, foot, visitDate, markBelowCoronetMm } of marks) {
    const days = dayNumber(visitDate)! - dayNumber(bursts.get(`${horseId} ${foot}`)!)!;
    expect(markBelowCoronetMm!).toBeGreaterThanOrEqual(0.2 * days - 3);
    expect(markBelowCoronetMm!).toBeLessThanOrEqual(0.31 * days + 3);
  }
  for (const foot of grouped(marks, ({ horseId, foot: of }) => `${horseId} ${of}`).values()) {
    const depths = foot.map(({ markBelowCoronetMm }) => markBelowCoronetMm!);
    expect(depths).toEqual([...depths].sort((a, b) => a - b));
  }
});

// Common practice, no source: a mark of the wall never moves up. Growth of each horse is planted between 0.20 and 0.31 mm a day; a mark is read with
// an SD of 0.8 mm and to the millimetre, so an error of some 1.2 mm over the days summed of one horse.
test("rings and tracks that were followed give each horse the growth that was planted", () => {
  const tracks = markTracks(study.visits);
  expect(tracks.filter(({ notTheOneBefore }) => notTheOneBefore !== null)).toEqual([]);
  const rows = markGrowth(study);
  expect(rows.length).toBeGreaterThan(200);
  const planted = new Map(truth.horses.map(({ horseId, growthMmPerDay }) => [horseId, growthMmPerDay]));
  for (const [horseId, of] of grouped(rows, (row) => row.horseId)) {
    const days = of.reduce((sum, row) => sum + row.days, 0);
    const rate = of.reduce((sum, row) => sum + row.grownMm, 0) / days;
    expect(Math.abs(rate - planted.get(horseId)!), horseId).toBeLessThan(0.005 + 6 / days);
  }
  expect(new Set(rows.map(({ horseId }) => horseId)).size).toBeGreaterThan(15);
});

test("when a mark began holds the planted day, reading error aside", () => {
  const times = markTimes(study.visits);
  const began = (horseId: string, foot: string, kind: string) => {
    const horse = truth.horses.find((each) => each.horseId === horseId)!;
    return kind === "ring" ? horse.ringOn! : horse.bursts.find((burst) => burst.foot === foot)!.burstOn;
  };
  // 1.6 mm, two SD of a reading, are 8 days at the slowest rate.
  for (const { horseId, foot, markKind, beganEarliest, beganLatest } of times) {
    const day = dayNumber(began(horseId, foot, markKind))!;
    expect(day).toBeGreaterThanOrEqual(dayNumber(beganEarliest)! - 8);
    expect(day).toBeLessThanOrEqual(dayNumber(beganLatest)! + 8);
  }
  expect(times.length).toBeGreaterThan(60);
});

test("feet measured by two observers: errors of reading as they were planted", () => {
  const sem = (measure: "hoofWidthMm" | "toeAngleDeg") =>
    standardErrorOfMeasurement(repeatedMeasures(study.visits, [measure]).map(({ first, second }) => [first, second]));
  // Planted with the reading step: sqrt(1 + 1/12) mm and sqrt(0.6^2 + 0.5^2 / 12) degrees.
  for (const [measure, planted] of [
    ["hoofWidthMm", Math.sqrt(1 + 1 / 12)],
    ["toeAngleDeg", Math.sqrt(0.36 + 0.25 / 12)],
  ] as const) {
    const { n, lower, upper } = sem(measure);
    expect(n).toBeGreaterThan(30);
    expect(lower!).toBeLessThan(planted);
    expect(upper!).toBeGreaterThan(planted);
  }
});

// Common practice, no source: overlong feet crack, and folded, overgrown bars go with long intervals.
test("cracks and folded bars go with long gaps", () => {
  const routine = study.visits.filter(({ reason, bars }) => reason === "routine" && bars !== null);
  const rows = [...grouped(routine, ({ horseId }) => horseId).values()].flatMap((visits) =>
    [...grouped(visits, ({ foot }) => foot).values()].flatMap((history) =>
      history
        .slice(1)
        .map((visit, place) => ({ visit, gapDays: dayNumber(visit.visitDate)! - dayNumber(history[place]!.visitDate)! })),
    ),
  );
  const share = (long: boolean, has: (visit: FootVisit) => boolean) => {
    const of = rows.filter(({ gapDays }) => gapDays > 56 === long && gapDays > 0);
    return of.filter(({ visit }) => has(visit)).length / of.length;
  };
  expect(share(true, ({ bars }) => bars !== "level")).toBeGreaterThan(1.5 * share(false, ({ bars }) => bars !== "level"));
  expect(share(true, ({ crackSite }) => crackSite !== null)).toBeGreaterThan(
    1.3 * share(false, ({ crackSite }) => crackSite !== null),
  );
});

// Common practice, no source: horn colour is per foot. Abidin NSZ et al. 2013, IOSR-JAVS 5(2):26: no link of pigment to lesions.
test("a horse carries any mix of dark and light feet, each foot always the same", () => {
  const colours = grouped(
    study.visits.filter(({ hornColour }) => hornColour !== null),
    ({ horseId, foot }) => `${horseId} ${foot}`,
  );
  for (const rows of colours.values()) expect(new Set(rows.map(({ hornColour }) => hornColour)).size).toBe(1);
  const mixed = truth.horses.filter(({ hornColours }) => new Set(hornColours).size > 1);
  expect(mixed.length / truth.horses.length).toBeGreaterThan(0.5);
});

// Lesniak K et al. 2017, Animals 7:29: trimming shortens the dorsal wall and raises the dorsal angle of shod feet.
test("a trim shortens the toe, and raises the angle of a shod foot", () => {
  const days = grouped(study.visits, ({ horseId, visitDate, foot }) => `${horseId} ${visitDate} ${foot}`);
  const shod = new Map(study.horses.map((horse) => [horse.horseId, horse.shod]));
  const pairs = [...days.values()].flatMap((rows) => {
    const [before, after] = ["before_trim", "after_trim"].map((stage) => rows.find((row) => row.stage === stage));
    return before === undefined || after === undefined ? [] : [{ before, after }];
  });
  expect(pairs.length).toBeGreaterThan(300);
  const change = (of: typeof pairs, measure: "toeLengthMm" | "toeAngleDeg") =>
    of.flatMap(({ before, after }) =>
      before[measure] === null || after[measure] === null ? [] : [after[measure] - before[measure]],
    );
  expect(change(pairs, "toeLengthMm").every((mm) => mm <= 0)).toBe(true);
  expect(mean(change(pairs, "toeLengthMm"))).toBeLessThan(-3);
  expect(
    mean(
      change(
        pairs.filter(({ before }) => shod.get(before.horseId) === "all"),
        "toeAngleDeg",
      ),
    ),
  ).toBeGreaterThan(1);
});

test("the planted uneven fores stand out", () => {
  const planted = truth.horses.filter(({ special }) => special.includes("uneven fores")).map(({ horseId }) => horseId);
  const pairs = unevenPairs(study).filter(({ uneven, end }) => uneven !== null && end === "fore");
  const share = (horses: (horseId: string) => boolean) => {
    const of = pairs.filter(({ horseId }) => horses(horseId));
    return of.filter(({ uneven }) => uneven).length / of.length;
  };
  expect(planted.length).toBe(3);
  expect(share((horseId) => planted.includes(horseId))).toBeGreaterThan(0.7);
  expect(share((horseId) => !planted.includes(horseId))).toBeLessThan(0.03);
});

test("nineteen in twenty measures lie in their usual range", () => {
  for (const { name, soft } of visitColumns.flatMap((column) => ("soft" in column ? [column] : []))) {
    const values = study.visits.flatMap((visit) => (visit[fieldName(name) as keyof FootVisit] as number | null) ?? []);
    expect(values.length, name).toBeGreaterThan(0);
    expect(values.filter((value) => value >= soft[0] && value <= soft[1]).length / values.length, name).toBeGreaterThan(0.95);
  }
});
