import { expect, test } from "vitest";
import { prevalenceByLevel } from "../../src/answer/prevalenceByLevel.js";
import { footVisit } from "../footVisit.js";
import { horseStay, studyOf } from "../study.js";
import { herd, renamed, reversed } from "./herd.js";

/** One visit a horse, feet LF RF LH RH as written: 1 thrush, 0 clear, - not graded. */
function feet(horses: Readonly<Record<string, string>>) {
  const visits = Object.entries(horses).flatMap(([horseId, grades]) =>
    (["LF", "RF", "LH", "RH"] as const).map((foot, i) =>
      footVisit({ horseId, foot, examined: grades[i] !== "-", thrushGrade: grades[i] === "-" ? null : Number(grades[i]) }),
    ),
  );
  return studyOf({ visits, horses: Object.keys(horses).map((horseId) => horseStay({ horseId, yardId: "North" })) });
}

// By hand, with five horses of four feet: A 1011, B 0000, C 0010, D 0011, E 01-0. Feet 7 of 19, horses 4 of 5, yards 1 of 1.
const study = feet({ A: "1011", B: "0000", C: "0010", D: "0011", E: "01-0" });

test("feet, visits, horses and yards", () => {
  const answer = prevalenceByLevel(study);
  if (answer.kind !== "answer") throw new Error(answer.reason);
  expect(answer.sentence).toMatch(
    /^Thrush was found at 37% \(95% interval \d+% to \d+%\) of graded looks at a foot and in 4 of 5 horses at one time or another\./,
  );
  expect(answer.method).toMatchObject({ n: 19, missing: 1 });
  expect(answer.tables[0]!.rows.map(({ unit, cases, n, missing }) => [unit, cases, n, missing])).toEqual([
    ["looks at a foot", 7, 19, 1],
    ["visits, any foot", 4, 5, 0],
    ["horses, any foot", 4, 5, 0],
    ["yards, any horse", 1, 1, 0],
  ]);
});

test("how alike four feet of a horse are", () => {
  // Four horses A 1011, B 0000, C 0010, D 0011: mean squares 5/12 between and 5/24 within, icc (10 - 5) / (10 + 3 x 5) = 0.2.
  const four = feet({ A: "1011", B: "0000", C: "0010", D: "0011" });
  const answer = prevalenceByLevel({ ...four, settings: { ...four.settings, minimumHorses: 4 } });
  if (answer.kind !== "answer") throw new Error(answer.reason);
  const [sameVisit] = answer.tables[2]!.rows;
  expect(sameVisit).toMatchObject({ clusters: 4, size: 4, icc: expect.closeTo(0.2, 12) as number });
});

test("row order and names of horses do not matter", () => {
  expect(prevalenceByLevel(reversed(study))).toEqual(prevalenceByLevel(study));
  expect(prevalenceByLevel(renamed(study))).toEqual(prevalenceByLevel(study));
});

test("an empty study and four horses are not enough", () => {
  expect(prevalenceByLevel(herd({}))).toMatchObject({ reason: "No horses have a graded frog; fewer than 5 give no share." });
  const four = { ...study, visits: study.visits.filter(({ horseId }) => horseId !== "E") };
  expect(prevalenceByLevel(four)).toMatchObject({ reason: "4 horses have a graded frog; fewer than 5 give no share." });
});
