import { expect, test } from "vitest";
import { nonEquineDays } from "../../../src/read/otherAnimals/nonEquineDays.js";
import type { FootVisit } from "../../../src/study/FootVisit.js";
import type { Issue } from "../../../src/study/Issue.js";
import { footVisit } from "../../footVisit.js";
import { horseStay, studyOf } from "../../study.js";

const feet = ["LF", "RF", "LH", "RH"] as const;
const fourFeet = (cells: Partial<FootVisit>, line = 2) => feet.map((foot, at) => footVisit({ ...cells, foot, line: line + at }));
const walls = { hoofWidthMm: 120, hoofLengthMm: 125, toeLengthMm: 80 };
/** Ten horses whose frogs are graded and whose walls are measured. */
const horses = Array.from({ length: 10 }, (_, place) =>
  fourFeet({ horseId: `Horse ${String(place)}`, thrushGrade: 0, ...walls }, 100 + 4 * place),
).flat();
const signsOf = (visits: readonly FootVisit[], parts: Parameters<typeof studyOf>[0] = {}) =>
  nonEquineDays(studyOf({ visits: [...horses, ...visits], ...parts })).map(({ horseId, signs }) => [horseId, signs.length]);

test("a claw in the note of an animal whose frogs are never mentioned is no horse", () => {
  const claws = fourFeet({ horseId: "Daisy", ...walls, note: "outer claw long" });
  expect(signsOf(claws)).toEqual([["Daisy", 2]]);
});

test("the same note on an animal whose frogs were graded on another day is one sign, and is kept", () => {
  const claws = fourFeet({ horseId: "Daisy", ...walls, note: "outer claw long" });
  const before = footVisit({ horseId: "Daisy", visitDate: "2024-11-01", thrushGrade: 1 });
  expect(signsOf([...claws, before])).toEqual([]);
});

test("walls without frogs and a herd tag alone are not enough: horses have long numbers too", () => {
  expect(signsOf(fourFeet({ horseId: "DE333331234507", ...walls }))).toEqual([]);
  expect(signsOf(fourFeet({ horseId: "IE123456789012", ...walls, note: "cloven" }))).toEqual([["IE123456789012", 3]]);
});

test("where frogs are not looked at as a rule, a blank frog says nothing", () => {
  const visits = fourFeet({ horseId: "Daisy", ...walls, note: "outer claw long" });
  expect(nonEquineDays(studyOf({ visits }))).toEqual([]);
});

const repeat = (line: number, first: number): Issue => ({
  file: "visits.csv",
  line,
  row: null,
  column: null,
  value: null,
  code: "duplicate_row",
  severity: "set_aside",
  message: `visits.csv, line ${String(line)}: a row of this horse, day, foot and stage already stands in line ${String(first)}.`,
  hint: "",
});

test("eight rows of one day, four of them set aside as repeats, on an animal without a frog", () => {
  const visits = fourFeet({ horseId: "Daisy", ...walls });
  const issues = visits.map(({ line }) => repeat(line + 4, line));
  const report = { ...studyOf().report, issues };
  expect(signsOf(visits, { report })).toEqual([["Daisy", 2]]);
  // The same repeats of a horse whose frogs are graded are a visit written down twice.
  const twice = fourFeet({ horseId: "Rowan", thrushGrade: 0, ...walls });
  expect(signsOf(twice, { report })).toEqual([]);
});

test("feet before and after a trim, or of two observers, are no eight digits", () => {
  const before = fourFeet({ horseId: "Rowan", stage: "before_trim", ...walls });
  const after = fourFeet({ horseId: "Rowan", stage: "after_trim", ...walls }, 10);
  const another = fourFeet({ horseId: "Rowan", stage: "after_trim", observerId: "B", ...walls }, 20);
  expect(signsOf([...before, ...after, ...another])).toEqual([]);
});

test("inner and outer claw of one foot, and a claw-like shape", () => {
  const claw = { hoofWidthMm: 55, hoofLengthMm: 110 };
  const inner = footVisit({ horseId: "Daisy", observerId: "A", ...claw, note: "inner claw" });
  const outer = footVisit({ horseId: "Daisy", observerId: "B", line: 3, ...claw, note: "outer claw" });
  // Two digits of one foot, the word, the shape, and no frog.
  expect(signsOf([inner, outer])).toEqual([["Daisy", 4]]);
});

test("a narrow foot is one sign: 0.65 of its length is no longer a claw", () => {
  const kind = [horseStay({ horseId: "Daisy", type: "Jersey cow" })];
  const at = (hoofWidthMm: number) =>
    signsOf(fourFeet({ horseId: "Daisy", thrushGrade: 0, hoofWidthMm, hoofLengthMm: 100 }), { horses: kind });
  expect(at(64)).toEqual([["Daisy", 2]]);
  expect(at(65)).toEqual([]);
});

test("500 kg do not stand on feet of 74 mm, and a pony of 62.5 kg may", () => {
  const at = (weightKg: number, hoofWidthMm: number) =>
    signsOf(fourFeet({ horseId: "Daisy", hoofWidthMm, note: "claw" }), { horses: [horseStay({ horseId: "Daisy", weightKg })] });
  expect(at(500, 74)).toEqual([["Daisy", 2]]);
  expect(at(500, 76)).toEqual([]);
  // The cube root of an eighth is a half.
  expect(at(62.5, 38)).toEqual([]);
});

test("a word for another animal alone is kept: it may be the horse's companion", () => {
  expect(signsOf(fourFeet({ horseId: "Rowan", thrushGrade: 0, ...walls, note: "kicked by a cow" }))).toEqual([]);
});
