import { expect, test } from "vitest";
import { footEndChances } from "../../src/estimate/footEndChances.js";
import { linearDiscriminant } from "../../src/estimate/linearDiscriminant.js";
import { normalUpper } from "../../src/estimate/numeric/normalUpper.js";
import { seededRandom } from "../../src/estimate/numeric/seededRandom.js";
import type { FootVisit } from "../../src/study/FootVisit.js";
import type { OutlinePoint } from "../../src/study/OutlinePoint.js";
import { tracing } from "../derive/tracing.js";
import { faultCode } from "./faultCode.js";
import { footVisit } from "../footVisit.js";
import { horseStay, studyOf } from "../study.js";

const feet = ["LF", "RF", "LH", "RH"] as const;
const sized = (horseId: string, foot: FootVisit["foot"], index: number, cells: Partial<FootVisit> = {}) =>
  footVisit({ horseId, foot, stage: "after_trim", hoofLengthMm: 100, hoofWidthMm: 100 * index, ...cells });

function herd(horses: number, seed: string): FootVisit[] {
  const random = seededRandom(seed);
  return Array.from({ length: horses }, (_, k) =>
    feet.map((foot) => sized(`h${k}`, foot, (foot.endsWith("F") ? 1.04 : 0.96) + random.normal(0, 0.04))),
  ).flat();
}

test("means two standard deviations apart: mistaken as often as the normal curve says, a foot in the middle is even", () => {
  const visits = [...herd(400, "apart"), sized("box", "U", 1), sized("crate", "U", 1.04)];
  const { feet: judged, rules } = footEndChances({ visits, horses: [], outlines: [] });
  expect(rules).toHaveLength(1);
  expect(rules[0]).toMatchObject({ from: "caliper", stage: "after_trim", terms: ["shapeIndex"], n: 1600, horses: 400 });
  // The error of the best rule is the normal tail beyond half of the distance, 0.1587; of 1600 feet, with three standard errors of 0.009.
  const { errorRate, errors } = rules[0]!.crossValidated;
  expect(Math.abs(errorRate.estimate! - normalUpper(1))).toBeLessThan(0.027);
  expect(
    judged.filter(({ labelled, probabilityFore }) => labelled !== null && probabilityFore > 0.5 !== (labelled === "fore")),
  ).toHaveLength(errors);
  const [box, crate] = judged.filter(({ specimen }) => specimen);
  expect(box).toMatchObject({ horseId: "box", foot: "U", labelled: null, from: "caliper", tracing: null });
  // At the middle the odds are even; at the mean of the fore feet they are exp(2) to 1. Means and spread are estimated.
  expect(Math.abs(box!.probabilityFore - 0.5)).toBeLessThan(0.06);
  expect(Math.abs(crate!.probabilityFore - Math.exp(2) / (1 + Math.exp(2)))).toBeLessThan(0.03);
});

test("a horse has no part in the rule that judges it: the same chance as by a rule made from the others", () => {
  const visits = herd(8, "others");
  const { feet: judged } = footEndChances({ visits, horses: [], outlines: [] });
  for (const horseId of ["h0", "h5"]) {
    const rows = visits
      .filter((visit) => visit.horseId !== horseId)
      .map(({ foot, hoofWidthMm, hoofLengthMm }) => ({
        end: foot.endsWith("F") ? "fore" : "hind",
        index: hoofWidthMm! / hoofLengthMm!,
      }));
    const rule = linearDiscriminant({ rows, label: "end", terms: ["index"], priors: { fore: 0.5, hind: 0.5 } });
    for (const visit of visits.filter((each) => each.horseId === horseId)) {
      const [said] = rule.predict([{ index: visit.hoofWidthMm! / visit.hoofLengthMm! }]);
      const own = judged.find((each) => each.horseId === horseId && each.foot === visit.foot);
      expect(own!.probabilityFore).toBeCloseTo(said!.posterior["fore"]!, 9);
    }
  }
});

test("stages have rules of their own, and a foot is judged by that of its stage", () => {
  // Before trimming all feet are 0.1 narrower for their length: a hind foot after trimming looks like a fore foot before.
  const after = herd(8, "stages");
  const before = after.map((visit): FootVisit => ({ ...visit, stage: "before_trim", hoofWidthMm: visit.hoofWidthMm! - 10 }));
  const specimens = [
    sized("a", "U", 0.95, { stage: "before_trim" }),
    sized("b", "U", 0.95),
    sized("c", "U", 0.95, { stage: "single" }),
  ];
  const { feet: judged, rules } = footEndChances({ visits: [...after, ...before, ...specimens], horses: [], outlines: [] });
  expect(rules.map(({ stage, n }) => [stage, n])).toEqual([
    ["after_trim", 32],
    ["before_trim", 32],
  ]);
  const chance = (horseId: string) => judged.find((foot) => foot.horseId === horseId)!.probabilityFore;
  expect(chance("a")).toBeGreaterThan(0.5);
  expect(chance("b")).toBeLessThan(0.5);
  // Of no stage with a rule: by that of most horses, or the first by name.
  expect(chance("c")).toBe(chance("b"));
  const alone = footEndChances({ visits: [...after, ...specimens.slice(1, 2)], horses: [], outlines: [] });
  expect(chance("b")).toBe(alone.feet.find(({ horseId }) => horseId === "b")!.probabilityFore);
});

test("outlines and calipers each by their own rule; the order of rows makes no difference", () => {
  const outlines = Array.from({ length: 6 }, (_, k): OutlinePoint[] => [
    ...tracing({ horseId: `h${k}`, foot: "RF", stage: "after_trim", halfWidthMm: 66 + (k % 4), points: 60 + k }),
    ...tracing({
      horseId: `h${k}`,
      foot: "RH",
      stage: "after_trim",
      halfWidthMm: 58 + (k % 3),
      points: 62 + k,
      halfHeightMm: 64 + (k % 2),
    }),
  ]).flat();
  const parts = {
    visits: herd(6, "both"),
    horses: [],
    outlines: [...outlines, ...tracing({ horseId: "box", foot: "U", halfWidthMm: 59 })],
  };
  const found = footEndChances(parts);
  expect(found.rules.map(({ from, n }) => [from, n])).toEqual([
    ["outline", 12],
    ["caliper", 24],
  ]);
  expect(found.feet.find(({ horseId }) => horseId === "box")).toMatchObject({ from: "outline", specimen: true, labelled: null });
  const back = footEndChances({ ...parts, visits: [...parts.visits].reverse(), outlines: [...parts.outlines].reverse() });
  const byName = (of: typeof found) =>
    new Map(of.feet.map((foot) => [`${foot.horseId} ${foot.foot} ${foot.from}`, foot.probabilityFore]));
  for (const [name, chance] of byName(found)) expect(byName(back).get(name)).toBeCloseTo(chance, 9);
});

test("no rule without enough horses or both ends, said in words; donkeys have no part; a bad level is refused", () => {
  const visits = herd(4, "few");
  expect(footEndChances(studyOf({ visits }))).toEqual({
    feet: [],
    rules: [],
    notes: ["caliper readings, after trim: 4 horses; 5 are needed."],
  });
  expect(footEndChances(studyOf({ visits }), { leastHorses: 4 }).rules).toHaveLength(1);
  const fores = herd(6, "fores").filter(({ foot }) => foot.endsWith("F"));
  expect(footEndChances(studyOf({ visits: fores })).notes).toEqual(["caliper readings, after trim: only one end was recorded."]);
  const horses = Array.from({ length: 6 }, (_, k) => horseStay({ horseId: `h${k}`, species: "donkey" }));
  expect(footEndChances(studyOf({ visits: herd(6, "donkeys"), horses }))).toEqual({ feet: [], rules: [], notes: [] });
  expect(footEndChances(studyOf())).toEqual({ feet: [], rules: [], notes: [] });
  expect(faultCode(() => footEndChances(studyOf({ visits: herd(6, "level") }), { level: 2 }))).toBe("out_of_range");
});
