import { readFileSync, statSync } from "node:fs";
import { expect, test } from "vitest";
import { outlineMeasures } from "../../src/derive/outlineMeasures.js";
import { repeatedTracings } from "../../src/derive/repeatedTracings.js";
import type { TracedOutline } from "../../src/derive/TracedOutline.js";
import { tracedOutlines } from "../../src/derive/tracedOutlines.js";
import { medialLateralAsymmetry } from "../../src/estimate/medialLateralAsymmetry.js";
import { minimumDetectableChange } from "../../src/estimate/minimumDetectableChange.js";
import { standardErrorOfMeasurement } from "../../src/estimate/standardErrorOfMeasurement.js";
import { toeTaper } from "../../src/estimate/toeTaper.js";
import type { DistrictTruth } from "../../src/simulate/district/districtTruth.js";
import type { Study } from "../../src/study/Study.js";
import { demoStudy } from "./demoStudy.js";

const folder = `${import.meta.dirname}/../../data-demo`;
const study: Study = await demoStudy();
const truth = JSON.parse(readFileSync(`${folder}/truth.json`, "utf8")) as DistrictTruth;
const all = tracedOutlines(study, { mirrorLeft: true });
const usable = all.filter((outline) => outline.usable);
const key = ({ horseId, visitDate, foot }: Pick<TracedOutline, "horseId" | "visitDate" | "foot">) =>
  [horseId, visitDate, foot].join(" ");
const trueForms = new Map(truth.outlines.feet.map((form) => [[form.horseId, form.visitDate, form.foot].join(" "), form]));
const visits = new Map(study.visits.map((visit) => [`${key(visit)} ${visit.stage ?? ""}`, visit]));
const visitOf = (outline: TracedOutline) => visits.get(`${key(outline)} ${outline.stage ?? ""}`);
const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
const taper = (outline: TracedOutline) => toeTaper(outline.wall, outline.landmarks!).taper;
const asymmetry = (outline: TracedOutline) => medialLateralAsymmetry(outline.wall, outline.landmarks!).areaAsymmetry;
const rightHanded = usable.filter(({ faults }) => faults.length === 0);

function correlation(pairs: readonly (readonly [number, number])[]): number {
  const [mx, my] = [mean(pairs.map(([x]) => x)), mean(pairs.map(([, y]) => y))];
  const sum = (of: (x: number, y: number) => number) => pairs.reduce((total, [x, y]) => total + of(x - mx, y - my), 0);
  return sum((x, y) => x * y) / Math.sqrt(sum((x) => x * x) * sum((_, y) => y * y));
}

test("a file of outlines that is not too large, of some twenty horses, two detached feet among them", () => {
  expect(statSync(`${folder}/outlines.csv`).size).toBeLessThan(700_000);
  expect(new Set(all.map(({ horseId }) => horseId)).size).toBeGreaterThanOrEqual(20);
  expect(all.filter(({ side }) => side === null).map(({ horseId, foot }) => `${horseId} ${foot}`)).toEqual([
    "specimen 1 F",
    "specimen 2 H",
  ]);
});

test("putting the outlines together finds every slip planted in one tracing, and nothing else", () => {
  const found = all.flatMap((outline) => outline.faults.map(({ code }) => `${key(outline)} ${code}`));
  const planted = truth.outlines.faults.map(({ horseId, visitDate, foot, code }) => `${horseId} ${visitDate} ${foot} ${code}`);
  expect(planted).toHaveLength(3);
  expect(found.sort()).toEqual(planted.sort());
});

// Stachurska A et al. 2008, Arch Tierz 51:531 (abstract): width tells fore from hind, fore wider. Casanova PM et al. 2012, J Equine Vet Sci 32:231
// (digest): soles of 12 × 13 cm in front and 12 × 12 cm behind, so 1.08 against 1.00.
test("fore feet are rounder than hind feet, by width over length and at the toe", () => {
  const of = (end: "fore" | "hind", value: (outline: TracedOutline) => number) =>
    usable.filter((outline) => outline.end === end).map(value);
  const index = (outline: TracedOutline) => outlineMeasures(outline)!.shapeIndex;
  expect(mean(of("fore", index)) - mean(of("hind", index))).toBeGreaterThan(0.04);
  expect(Math.min(...of("fore", taper))).toBeGreaterThan(mean(of("hind", taper)));
  expect(Math.max(...of("hind", taper))).toBeLessThan(mean(of("fore", taper)));
});

// Common practice, no source: a wall that flares bends outwards, so that side of the ground surface is larger.
test("a foot with a flare on its outer side is larger on that side, and each foot as much as was planted", () => {
  const flared = rightHanded.filter((outline) => visitOf(outline)?.flareSite?.includes("lateral"));
  const plain = rightHanded.filter((outline) => visitOf(outline)?.flareSite === null);
  expect(flared.length).toBeGreaterThan(8);
  expect(mean(flared.map(asymmetry)) - mean(plain.map(asymmetry))).toBeGreaterThan(0.015);
  // A toe landmark off by 0.6 mm tilts the axis, which costs some of the correlation.
  expect(correlation(rightHanded.map((outline) => [trueForms.get(key(outline))!.bulge, asymmetry(outline)]))).toBeGreaterThan(
    0.8,
  );
});

/** Half width over the greatest one at a share of the length from the heels, by the formula of the planted form: roundness at the toe, a parabola behind. */
function planted(end: "fore" | "hind", roundness: number, share: number): number {
  const { foreWidest, hindWidest, foreHeels, hindHeels } = truth.outlines.planted;
  const [widest, heels] = end === "fore" ? [foreWidest, foreHeels] : [hindWidest, hindHeels];
  if (share < widest) return heels + (1 - heels) * (1 - ((widest - share) / widest) ** 2);
  return (1 - ((share - widest) / (1 - widest)) ** roundness) ** (1 / roundness);
}

test("foot by foot the taper is that of the planted roundness", () => {
  const gaps = usable.flatMap((outline) => {
    const form = trueForms.get(key(outline));
    return form === undefined || outline.end === null ? [] : [taper(outline) - planted(outline.end, form.roundness, 0.75)];
  });
  expect(gaps.length).toBeGreaterThan(140);
  // Wander and jitter, 0.43 mm together, on two borders of two widths of 100 to 130 mm: about 0.007; and a toe seen 0.6 mm off, on which the
  // place a quarter from it leans.
  expect(Math.abs(mean(gaps))).toBeLessThan(0.003);
  expect(Math.sqrt(mean(gaps.map((gap) => gap ** 2)))).toBeLessThan(0.011);
  expect(Math.max(...gaps.map(Math.abs))).toBeLessThan(0.03);
});

test("foot by foot the asymmetry is that of the planted bulge", () => {
  const steps = Array.from({ length: 2000 }, (_, k) => (k + 0.5) / 2000);
  const pairs = rightHanded.flatMap((outline) => {
    const form = trueForms.get(key(outline));
    if (form === undefined || outline.end === null || outline.side === null) return [];
    const { end } = outline;
    const width = (share: number) => planted(end, form.roundness, share);
    // The bulge moves both borders outwards by its share of half the width, as much as a sine from heels to toe.
    const moved = mean(steps.map((share) => width(share) * form.bulge * Math.sin(Math.PI * share)));
    return [[moved / mean(steps.map(width)), asymmetry(outline)] as const];
  });
  expect(pairs.length).toBeGreaterThan(100);
  const gaps = pairs.map(([wanted, found]) => found - wanted);
  // An axis between landmarks seen 0.6 mm off tilts by up to half a degree.
  expect(Math.abs(mean(gaps))).toBeLessThan(0.002);
  expect(Math.sqrt(mean(gaps.map((gap) => gap ** 2)))).toBeLessThan(0.012);
  expect(Math.max(...gaps.map(Math.abs))).toBeLessThan(0.035);
  const [mx, my] = [mean(pairs.map(([x]) => x)), mean(pairs.map(([, y]) => y))];
  const slope = mean(pairs.map(([x, y]) => (x - mx) * (y - my))) / mean(pairs.map(([x]) => (x - mx) ** 2));
  expect(Math.abs(slope - 1)).toBeLessThan(0.15);
});

// Common practice, no source: a wall that flares lies flatter than the one across from it.
test("the side that was traced larger is the flatter one", () => {
  const pairs = rightHanded.flatMap((outline) => {
    const { medialWallAngleDeg: medial = null, lateralWallAngleDeg: lateral = null } = visitOf(outline) ?? {};
    return medial === null || lateral === null ? [] : [[asymmetry(outline), lateral - medial] as const];
  });
  expect(pairs.length).toBeGreaterThan(100);
  expect(correlation(pairs)).toBeLessThan(-0.4);
});

test("what a caliper would read off the outline is what the caliper read on the foot", () => {
  for (const measure of ["hoofWidthMm", "hoofLengthMm", "frogWidthMm", "frogLengthMm"] as const) {
    const differences = usable.flatMap((outline) => {
      const [traced, read] = [outlineMeasures(outline)![measure], visitOf(outline)?.[measure] ?? null];
      return traced === null || read === null ? [] : [traced - read];
    });
    expect(differences.length).toBeGreaterThan(100);
    // A caliper is read with an SD of 1 to 1.2 mm; an extent over shaky points comes out a little large.
    expect(Math.abs(mean(differences)), measure).toBeLessThan(1);
    expect(Math.sqrt(mean(differences.map((mm) => mm ** 2))), measure).toBeLessThan(2);
  }
});

test("tracings that were made twice tell the error of tracing, which is small beside what it is to show", () => {
  const pairs = repeatedTracings(all);
  expect(pairs.length).toBeGreaterThanOrEqual(16);
  expect(new Set(pairs.map(({ first, second }) => first.observerId === second.observerId)).size).toBe(2);
  const detectable = (value: (outline: TracedOutline) => number) =>
    minimumDetectableChange(standardErrorOfMeasurement(pairs.map(({ first, second }) => [value(first), value(second)])).estimate);
  const ends = (["fore", "hind"] as const).map((end) => mean(usable.filter((outline) => outline.end === end).map(taper)));
  expect(ends[0]! - ends[1]!).toBeGreaterThan(3 * detectable(taper));
});

test("specimens are told apart by the shape of known feet", () => {
  const known = (end: "fore" | "hind") =>
    mean(usable.filter((outline) => outline.side !== null && outline.end === end).map(taper));
  const specimens = usable.filter(({ side }) => side === null);
  for (const outline of specimens) {
    const nearer = Math.abs(taper(outline) - known("fore")) < Math.abs(taper(outline) - known("hind")) ? "fore" : "hind";
    expect(nearer).toBe(outline.end);
  }
  expect(specimens).toHaveLength(2);
});
