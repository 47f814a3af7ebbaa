import { expect, test } from "vitest";
import { repeatedRows } from "../../../src/answer/fabric/repeatedRows.js";
import type { FootVisit } from "../../../src/study/FootVisit.js";
import { measuredHerd } from "./measuredHerd.js";

const herd = measuredHerd();
const day = herd.visits[0]?.visitDate ?? "";
const own = herd.visits.filter(({ horseId, visitDate }) => horseId === "Horse 1" && visitDate === day);
const again = (edit: (row: FootVisit) => Partial<FootVisit>) => ({
  visits: [...herd.visits, ...own.map((row) => ({ ...row, line: row.line + 1000, ...edit(row) }))],
});

test("the same measures under a second observer or stage are told, with both entries", () => {
  const [issue, ...more] = repeatedRows(again(() => ({ observerId: "B" })));
  expect(more).toEqual([]);
  expect(issue?.code).toBe("same_rows_twice");
  expect(issue?.message).toContain(`40 of 40 measures of Horse 1 on ${day} stand twice, as single by A and as single by B`);
  expect(repeatedRows(again(() => ({ stage: "after_trim" })))).toHaveLength(1);
});

test("two observers who truly measured, or a trim, raise nothing", () => {
  const read = (row: FootVisit) => ({
    observerId: "B",
    hoofWidthMm: (row.hoofWidthMm ?? 0) + 1,
    toeLengthMm: (row.toeLengthMm ?? 0) - 1,
    heelAngleDeg: (row.heelAngleDeg ?? 0) + 1,
  });
  expect(repeatedRows(again(read))).toEqual([]);
  expect(repeatedRows(herd)).toEqual([]);
});
