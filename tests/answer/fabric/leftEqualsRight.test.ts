import { expect, test } from "vitest";
import { leftEqualsRight } from "../../../src/answer/fabric/leftEqualsRight.js";
import type { FootVisit } from "../../../src/study/FootVisit.js";
import { measuredHerd } from "./measuredHerd.js";
import { edited } from "./plants.js";

const herd = measuredHerd();
const keyOf = ({ horseId, visitDate, foot }: FootVisit) => `${horseId} ${visitDate} ${foot}`;
const rows = new Map(herd.visits.map((row) => [keyOf(row), row]));
const mirrored = (of: (row: FootVisit) => boolean) =>
  edited(herd, (row) => {
    const left = rows.get(keyOf({ ...row, foot: row.foot === "RF" ? "LF" : "LH" }));
    return row.foot.startsWith("R") && of(row) && left !== undefined ? { ...left, foot: row.foot, line: row.line } : row;
  });
const dates = [...new Set(herd.visits.map(({ visitDate }) => visitDate))].sort();

test("feet that were both measured raise nothing", () => {
  expect(leftEqualsRight(herd)).toEqual([]);
});

test("one visit with right filled in from left is told by itself", () => {
  const issues = leftEqualsRight(mirrored(({ horseId, visitDate }) => horseId === "Horse 2" && visitDate === dates[0]));
  expect(issues.map(({ code }) => code)).toEqual(["left_equals_right"]);
  expect(issues[0]?.message).toContain(`20 of 20 measures of Horse 2 on ${dates[0] ?? ""} are the same left and right`);
});

test("an observer who does it everywhere is told once, and the other not", () => {
  const issues = leftEqualsRight(mirrored(({ observerId }) => observerId === "A"));
  expect(issues.map(({ message }) => message)).toEqual([
    expect.stringContaining(
      "where A is the observer, left and right are the same in 48 of 48 measured visits to 16 horses: 960 of 960 measures",
    ),
  ]);
});

test("equal in front only, with the hind feet measured, is a pair of even fronts", () => {
  const fore = ({ horseId, visitDate, foot }: FootVisit) => horseId === "Horse 2" && visitDate === dates[0] && foot === "RF";
  expect(leftEqualsRight(mirrored(fore))).toEqual([]);
});
