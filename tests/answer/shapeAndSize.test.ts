import { expect, test } from "vitest";
import { shapeAndSize } from "../../src/answer/shapeAndSize.js";
import type { FootVisit } from "../../src/study/FootVisit.js";
import { footVisit } from "../footVisit.js";
import { demoStudy } from "../simulate/demoStudy.js";
import { horseStay, studyOf } from "../study.js";
import { reversed } from "./herd.js";

const demo = await demoStudy();

/** A foot with this width over length and this root of width × length. */
function sized(
  horseId: string,
  foot: FootVisit["foot"],
  index: number,
  sizeMm: number,
  cells: Partial<FootVisit> = {},
): FootVisit {
  const root = Math.sqrt(index);
  return footVisit({ horseId, foot, stage: "after_trim", hoofWidthMm: sizeMm * root, hoofLengthMm: sizeMm / root, ...cells });
}

// Feet of one size within each horse, so that the answer is the paired t of the differences, which can be worked by hand.
const differences = [0.1, 0.08, 0.06, 0.12, -0.01];
const visits = differences.flatMap((difference, k): FootVisit[] => {
  const hind = 0.9 + 0.02 * ((k * 3) % 5);
  return [sized(`h${k}`, "LF", hind + difference, 110 + 6 * k), sized(`h${k}`, "LH", hind, 110 + 6 * k)];
});

test("a study small enough to work by hand", () => {
  const answer = shapeAndSize(studyOf({ visits }));
  if (answer.kind !== "answer") throw new Error(answer.reason);
  // R 4.2.2: t.test(c(.10, .08, .06, .12, -.01)) gives mean 0.07 and limits 0.0079168 and 0.1320832.
  expect(answer.sentence).toMatch(
    /^In 5 grown horses, horse and size allowed for, front feet were wider for their length than hind feet by 0\.070 \(95% interval 0\.008 to 0\.132\)\. With size left as it is, front less hind was \+0\.070, front feet being 0\.0% larger; /,
  );
  expect(answer.tables[0]!.rows).toMatchObject([
    { title: "Shape index", horses: 5, feet: 10, atOneSize: "0.070", atOneSizeFrom: "0.008", atOneSizeTo: "0.132" },
  ]);
  expect(answer.tables[1]!.rows).toMatchObject([{ asMeasured: "0.070", within: null }]);
  expect(answer.method).toMatchObject({ n: 10, missing: 0 });
});

test("front feet that only look rounder because they are larger are not called rounder", () => {
  // Larger feet are wider for their length; ends differ in nothing else. Readings that size does not explain are laid by hand.
  const offs = [0.012, -0.009, 0.004, -0.013, 0.008, -0.002, 0.01, -0.006];
  const rows = offs.flatMap((off, k): FootVisit[] => {
    const [hind, fore] = [100 + 5 * k, 108 + 5 * k + (k % 3)];
    const at = (size: number) => 0.95 + 0.4 * Math.log(size / 110) + 0.01 * ((k * 5) % 3);
    return [sized(`h${k}`, "RF", at(fore) + off, fore), sized(`h${k}`, "RH", at(hind), hind)];
  });
  const answer = shapeAndSize(studyOf({ visits: rows }));
  if (answer.kind !== "answer") throw new Error(answer.reason);
  expect(answer.sentence).toMatch(/^In 8 grown horses, horse and size allowed for, front and hind feet could not be told apart/);
  expect(Number(answer.tables[1]!.rows[0]!["asMeasuredFrom"])).toBeGreaterThan(0.02);
});

test("hinds rounder than fronts are said to be, with limits in order", () => {
  const turned = visits.map((visit): FootVisit => ({ ...visit, foot: visit.foot === "LF" ? "LH" : "LF" }));
  const answer = shapeAndSize(studyOf({ visits: turned }));
  expect(answer.kind === "answer" && answer.sentence).toContain(
    "front feet were narrower for their length than hind feet by 0.070 (95% interval 0.008 to 0.132)",
  );
});

test("stages are not mixed, and foals, yearlings, donkeys and mules have no part", () => {
  const horses = [
    ...differences.map((_, k) => horseStay({ horseId: `h${k}`, birthYear: 2012 })),
    horseStay({ horseId: "young", birthYear: 2024 }),
    horseStay({ horseId: "donkey", species: "donkey" }),
  ];
  const others = ["young", "donkey"].flatMap((name) => [sized(name, "LF", 1.4, 90), sized(name, "LH", 0.7, 140)]);
  const before = visits.map((visit): FootVisit => ({ ...visit, stage: "before_trim", hoofLengthMm: 90 })).slice(0, 8);
  const [plain, mixed] = [visits, [...before, ...others, ...visits]].map((rows) =>
    shapeAndSize(studyOf({ visits: rows, horses })),
  );
  if (plain!.kind !== "answer" || mixed!.kind !== "answer") throw new Error("no answer");
  expect(mixed!.sentence).toBe(plain!.sentence);
  expect(mixed!.tables).toEqual(plain!.tables);
});

test("feet without a measure are counted as missing; too few, none, and feet of one size are no answer", () => {
  const more = [footVisit({ horseId: "h0", foot: "RF", stage: "after_trim", toeAngleDeg: 50 })];
  const answer = shapeAndSize(studyOf({ visits: [...visits, ...more] }));
  expect(answer.kind === "answer" && answer.method).toMatchObject({ n: 10, missing: 1 });
  expect(shapeAndSize(studyOf({ visits: visits.slice(0, 8) }))).toMatchObject({
    kind: "not_enough_data",
    reason: "4 grown horses have width and length of both front and hind feet at one stage; fewer than 5 give no comparison.",
  });
  expect(shapeAndSize(studyOf())).toMatchObject({
    kind: "not_enough_data",
    reason: expect.stringMatching(/^No grown horses have/) as string,
  });
  const alike = differences.flatMap((difference, k) => [sized(`h${k}`, "LF", 1 + difference, 120), sized(`h${k}`, "LH", 1, 120)]);
  const same = alike.map((visit): FootVisit => ({ ...visit, hoofWidthMm: 120, hoofLengthMm: 120 }));
  expect(shapeAndSize(studyOf({ visits: same }))).toMatchObject({
    kind: "not_enough_data",
    reason: expect.stringMatching(/^Size cannot be allowed for: /) as string,
  });
});

test("the demo: the difference that was planted is found at one size, by caliper and on outlines", () => {
  const answer = shapeAndSize(demo);
  if (answer.kind !== "answer") throw new Error(answer.reason);
  const row = (title: RegExp) => answer.tables[0]!.rows.find((each) => title.test(String(each["title"])))!;
  // Planted 0.07 between trims, whatever the size of the foot; a foot grown long in the toe has less of it, and width is part of the size.
  expect(Number(row(/Shape index/)["atOneSizeFrom"])).toBeGreaterThan(0.05);
  expect(Number(row(/Shape index/)["atOneSizeTo"])).toBeLessThan(0.075);
  // Planted 50 degrees in front and 1.5 degrees steeper behind, whatever the size.
  expect(Number(String(row(/Toe angle/)["atOneSizeFrom"]).replace("−", "-"))).toBeLessThan(-1.5);
  expect(Number(String(row(/Toe angle/)["atOneSizeTo"]).replace("−", "-"))).toBeGreaterThan(-1.5);
  // No difference of the ends was planted in the frog index.
  expect(Number(String(row(/Frog index/)["atOneSizeFrom"]).replace("−", "-"))).toBeLessThan(0);
  expect(Number(row(/Frog index/)["atOneSizeTo"])).toBeGreaterThan(0);
  // The rounder toe in front (exponent 2.35 against 1.9) has nothing to do with size.
  expect(Number(row(/near the toe/)["atOneSizeFrom"])).toBeGreaterThan(0.05);
  expect(shapeAndSize(reversed(demo)).kind).toBe("answer");
});
