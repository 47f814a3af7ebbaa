import { expect, test } from "vitest";
import { frontAndHindByType } from "../../src/answer/frontAndHindByType.js";
import type { FootVisit } from "../../src/study/FootVisit.js";
import { footVisit } from "../footVisit.js";
import { horseStay, studyOf } from "../study.js";

const widths = [110, 108, 106, 112, 99, 120];
const visits = widths.flatMap((width, k): FootVisit[] => [
  footVisit({ horseId: `h${k}`, foot: "LF", stage: "after_trim", hoofWidthMm: width, hoofLengthMm: 100 }),
  footVisit({ horseId: `h${k}`, foot: "LH", stage: "after_trim", hoofWidthMm: 100, hoofLengthMm: 100 }),
]);
const horses = widths.map((_, k) =>
  horseStay({ horseId: `h${k}`, type: k < 5 ? "cob" : "pony", birthYear: k === 5 ? 2024 : 2012 }),
);

test("one value a horse; small groups greyed; ages apart", () => {
  const answer = frontAndHindByType(studyOf({ visits, horses }));
  if (answer.kind !== "answer") throw new Error(answer.reason);
  // R 4.2.2: t.test(c(.10, .08, .06, .12, -.01)) gives mean 0.07 and limits 0.0079168 and 0.1320832.
  const [all, types, ages] = answer.tables;
  expect(types!.rows[0]).toEqual({ name: "cob", horses: 5, estimate: "0.070", lower: "0.008", upper: "0.132" });
  expect(types!.greyed).toEqual([{ row: 1, reason: "fewer than 5 horses" }]);
  expect(ages!.rows.map(({ name, horses: n }) => [name, n])).toEqual([
    ["adult", 5],
    ["yearling", 1],
  ]);
  expect(all!.rows.find(({ name }) => name === "Shape index")).toMatchObject({ horses: 6, estimate: "0.092" });
  expect(answer.sentence).toContain("fewer than two types have enough horses");
});

test("several days of a horse are one value, and days of another age class are left out", () => {
  const earlier = [
    footVisit({ horseId: "h0", visitDate: "2013-03-01", foot: "LF", stage: "after_trim", hoofWidthMm: 200, hoofLengthMm: 100 }),
    footVisit({ horseId: "h0", visitDate: "2013-03-01", foot: "LH", stage: "after_trim", hoofWidthMm: 100, hoofLengthMm: 100 }),
  ];
  const [answer, plain] = [[...earlier, ...visits], visits].map((rows) => frontAndHindByType(studyOf({ visits: rows, horses })));
  if (answer!.kind !== "answer" || plain!.kind !== "answer") throw new Error("no answer");
  expect(answer!.tables[0]).toEqual(plain!.tables[0]);
});

test("too few horses", () => {
  expect(frontAndHindByType(studyOf({ visits: visits.slice(0, 8), horses }))).toMatchObject({
    kind: "not_enough_data",
    reason: expect.stringMatching(/^4 horses have/) as string,
  });
});

test("readings of another stage are not pooled", () => {
  const before = visits
    .slice(0, 10)
    .map((visit): FootVisit => ({ ...visit, stage: "before_trim", hoofWidthMm: visit.foot === "LF" ? 160 : 100 }));
  const [plain, mixed] = [visits, [...visits, ...before]].map((rows) => frontAndHindByType(studyOf({ visits: rows, horses })));
  if (plain!.kind !== "answer" || mixed!.kind !== "answer") throw new Error("no answer");
  expect(mixed!.tables).toEqual(plain!.tables);
});
