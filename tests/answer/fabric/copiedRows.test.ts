import { expect, test } from "vitest";
import { copiedRows } from "../../../src/answer/fabric/copiedRows.js";
import type { FootVisit } from "../../../src/study/FootVisit.js";
import { measuredHerd } from "./measuredHerd.js";
import { edited } from "./plants.js";

const herd = measuredHerd();
const [first = "", second = "", third = ""] = [...new Set(herd.visits.map(({ visitDate }) => visitDate))].sort();
const earlier = new Map(
  herd.visits.filter(({ horseId, visitDate }) => horseId === "Horse 1" && visitDate === first).map((row) => [row.foot, row]),
);
const copied = (on: string, edit: (row: FootVisit) => Partial<FootVisit> = () => ({})) =>
  edited(herd, (row) => {
    const from = row.horseId === "Horse 1" && row.visitDate === on ? earlier.get(row.foot) : undefined;
    return from === undefined ? row : { ...from, visitDate: on, line: row.line, ...edit(row) };
  });

test("measures that are read anew raise nothing", () => {
  expect(copiedRows(herd)).toEqual([]);
});

test("a visit copied forward is told, with both days and the lines it was copied from", () => {
  const issues = copiedRows(copied(second));
  expect(issues.map(({ code }) => code)).toEqual(["copied_forward"]);
  const lines = [...earlier.values()].map(({ line }) => line).join(", ");
  expect(issues[0]?.message).toContain(
    `40 of 40 measures of Horse 1 on ${second} are exactly those of ${first} (lines ${lines})`,
  );
  expect(issues[0]?.message).toContain("less than 1 in a million visits");
});

test("so is one of which a cell on each foot was changed, but not one of which two were", () => {
  const one = (row: FootVisit) => ({ toeLengthMm: row.toeLengthMm === null ? null : row.toeLengthMm + 20 });
  const two = (row: FootVisit) => ({ ...one(row), toeAngleDeg: row.toeAngleDeg === null ? null : row.toeAngleDeg + 20 });
  expect(copiedRows(copied(second, one))).toHaveLength(1);
  expect(copiedRows(copied(second, two))).toEqual([]);
});

test("only the visit before is looked at: a foot may come back to what it was", () => {
  expect(copiedRows(copied(third))).toEqual([]);
});

test("five equal measures are too few", () => {
  const fields = ["hoofWidthMm", "hoofLengthMm", "toeLengthMm", "heelHeightMm", "toeAngleDeg"] as const;
  const study = copied(second);
  const few = (count: number) =>
    edited(study, (row) => {
      const none = {
        heelAngleDeg: null,
        frogWidthMm: null,
        frogLengthMm: null,
        medialWallAngleDeg: null,
        lateralWallAngleDeg: null,
      };
      const kept = Object.fromEntries(
        fields.map((field, at) => [field, row.foot === "LF" || at < count - 5 ? row[field] : null]),
      );
      return { ...row, ...none, ...kept };
    });
  expect(copiedRows(few(5))).toEqual([]);
  expect(copiedRows(few(7))).toHaveLength(1);
});
