import { expect, test } from "vitest";
import { swappedWallSides } from "../../../src/answer/fabric/swappedWallSides.js";
import type { FootVisit } from "../../../src/study/FootVisit.js";
import { measuredHerd } from "./measuredHerd.js";
import { edited } from "./plants.js";

const herd = measuredHerd();
const day = herd.visits[0]?.visitDate ?? "";
/** The horse whose four feet all have the plainest difference between the walls. */
const plain = [...new Set(herd.visits.map(({ horseId }) => horseId))]
  .map((horseId) => ({ horseId, least: leastDifference(horseId) }))
  .reduce((top, each) => (each.least > top.least ? each : top)).horseId;

function leastDifference(horseId: string): number {
  const differences = herd.visits
    .filter((row) => row.horseId === horseId)
    .map((row) => (row.medialWallAngleDeg ?? 0) - (row.lateralWallAngleDeg ?? 0));
  return Math.min(...differences);
}

const mirrored = (of: (row: FootVisit) => boolean) =>
  edited(herd, (row) =>
    row.horseId === plain && row.visitDate === day && of(row)
      ? { ...row, medialWallAngleDeg: row.lateralWallAngleDeg, lateralWallAngleDeg: row.medialWallAngleDeg }
      : row,
  );

test("walls on their own sides raise nothing", () => {
  expect(swappedWallSides(herd)).toEqual([]);
});

test("medial and lateral exchanged on all feet of a day are told, foot by foot", () => {
  const issues = swappedWallSides(mirrored(() => true));
  expect(issues.map(({ code }) => code)).toEqual(["wall_sides_swapped"]);
  expect(issues[0]?.message).toContain(`of ${plain} on`);
  expect(issues[0]?.message).toMatch(
    / on 2024-10-04 were .* LF \+\d+(\.\d)? degrees here and -\d+(\.\d)? degrees on 5 other days, RF /,
  );
});

test("on one foot it may be a flare, and on two feet two", () => {
  expect(swappedWallSides(mirrored(({ foot }) => foot === "LF"))).toEqual([]);
  expect(swappedWallSides(mirrored(({ foot }) => foot.endsWith("F")))).toEqual([]);
});
