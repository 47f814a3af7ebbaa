import { expect, test } from "vitest";
import { heapedDigits } from "../../../src/answer/fabric/heapedDigits.js";
import { footVisit } from "../../footVisit.js";
import { measuredHerd } from "./measuredHerd.js";
import { edited } from "./plants.js";

const herd = measuredHerd();
const toFive = (value: number | null) => (value === null ? null : 5 * Math.round(value / 5));

test("readings to the millimetre raise nothing", () => {
  expect(heapedDigits(herd)).toEqual([]);
});

test("an observer who reads angles to five degrees is told, with the column and the counts", () => {
  const issues = heapedDigits(
    edited(herd, (row) => (row.observerId === "A" ? { ...row, toeAngleDeg: toFive(row.toeAngleDeg) } : row)),
  );
  expect(issues.map(({ code, column }) => [code, column])).toEqual([["heaped_digits", "toe_angle_deg"]]);
  // 16 horses, four feet, three visits by A; one in five of 192 is 38.
  expect(issues[0]?.message).toMatch(
    /192 of 192 readings of toe angle by A, of 16 horses, end in 0 or 5, where 38 are expected \(55 93 times, 50 80 times; 0 lie one beside\)/,
  );
});

test("one horse whose angle is 50 every time is a horse, not a habit", () => {
  const visits = Array.from({ length: 60 }, (_, visit) =>
    footVisit({
      horseId: `H${String(visit < 50 ? 0 : visit)}`,
      line: visit + 2,
      toeAngleDeg: visit < 50 ? 50 : 51 + (visit % 3),
      visitDate: `2025-0${String(1 + Math.floor(visit / 28))}-${String((visit % 28) + 1).padStart(2, "0")}`,
    }),
  );
  expect(heapedDigits({ visits })).toEqual([]);
});

test("a narrow distribution about a multiple of five is no heap: as many lie one beside", () => {
  const visits = Array.from({ length: 120 }, (_, at) =>
    footVisit({
      horseId: `H${String(at % 20)}`,
      visitDate: `2025-0${String(1 + Math.floor(at / 20))}-05`,
      line: at + 2,
      toeAngleDeg: 49 + (at % 3),
    }),
  );
  expect(heapedDigits({ visits })).toEqual([]);
});

test("thirty-nine readings are too few, and so are seven horses", () => {
  const visits = (count: number) =>
    Array.from({ length: count }, (_, at) =>
      footVisit({ horseId: `H${String(at)}`, line: at + 2, toeAngleDeg: at % 2 === 0 ? 50 : 55 }),
    );
  expect(heapedDigits({ visits: visits(39) })).toEqual([]);
  const ofSeven = visits(60).map((row, at) => ({
    ...row,
    horseId: `H${String(at % 7)}`,
    visitDate: `2025-01-${String(10 + Math.floor(at / 7))}`,
  }));
  expect(heapedDigits({ visits: ofSeven })).toEqual([]);
  expect(heapedDigits({ visits: visits(40) })).toHaveLength(1);
});
