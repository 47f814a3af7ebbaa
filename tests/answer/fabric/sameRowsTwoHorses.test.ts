import { expect, test } from "vitest";
import { sameRowsTwoHorses } from "../../../src/answer/fabric/sameRowsTwoHorses.js";
import type { FootVisit } from "../../../src/study/FootVisit.js";
import { footVisit } from "../../footVisit.js";
import { measuredHerd } from "./measuredHerd.js";

const herd = measuredHerd();
const day = herd.visits[0]?.visitDate ?? "";
const own = herd.visits.filter(({ horseId, visitDate }) => horseId === "Horse 1" && visitDate === day);
const also = (edit: (row: FootVisit) => Partial<FootVisit>) => ({
  visits: [...herd.visits, ...own.map((row) => ({ ...row, line: row.line + 1000, horseId: "Zinnia", ...edit(row) }))],
});

test("a visit that stands under two names is told, with the feet and lines", () => {
  const issues = sameRowsTwoHorses(also(() => ({})));
  expect(issues.map(({ code, line }) => [code, line])).toEqual([["same_rows_two_horses", (own[0]?.line ?? 0) + 1000]]);
  expect(issues[0]?.message).toContain(
    `on ${day} 10 measures of each foot of "Zinnia" are those of "Horse 1" (LF, RF, LH, RH; lines `,
  );
});

test("one measure that differs on each foot, another day, or another stage, is another visit", () => {
  expect(sameRowsTwoHorses(also((row) => ({ toeLengthMm: (row.toeLengthMm ?? 0) + 1 })))).toEqual([]);
  expect(sameRowsTwoHorses(also(() => ({ visitDate: "2019-01-01" })))).toEqual([]);
  expect(sameRowsTwoHorses(also(() => ({ stage: "after_trim" })))).toEqual([]);
  expect(sameRowsTwoHorses(herd)).toEqual([]);
});

test("five equal measures of one foot are told in no herd in which they come by chance", () => {
  const cells = (at: number) => ({
    hoofWidthMm: 120 + (at % 2),
    hoofLengthMm: 120,
    toeLengthMm: 80,
    heelHeightMm: 40,
    toeAngleDeg: 50,
  });
  const visits = Array.from({ length: 40 }, (_, at) => footVisit({ horseId: `H${String(at)}`, line: at + 2, ...cells(at) }));
  expect(sameRowsTwoHorses({ visits })).toEqual([]);
});
