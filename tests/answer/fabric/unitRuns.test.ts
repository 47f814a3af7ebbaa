import { expect, test } from "vitest";
import { unitRuns } from "../../../src/answer/fabric/unitRuns.js";
import type { FootVisit } from "../../../src/study/FootVisit.js";
import { studyFrom } from "../../read/folder.js";
import { measuredHerd } from "./measuredHerd.js";
import { edited } from "./plants.js";

const herd = measuredHerd();
const day = herd.visits[0]?.visitDate ?? "";
const inUnit = (per: number, of: (row: FootVisit) => boolean) =>
  edited(herd, (row) => (of(row) ? { ...row, toeLengthMm: Math.round((10 * (row.toeLengthMm ?? 0)) / per) / 10 } : row));
const here = (row: FootVisit) => row.horseId === "Horse 1" && row.visitDate === day;

test("measures in one unit raise nothing", () => {
  expect(unitRuns(herd)).toEqual([]);
});

test("the feet of one horse in centimetres or inches are told as that", () => {
  const [issue, ...more] = unitRuns(inUnit(10, here));
  expect(more).toEqual([]);
  expect([issue?.code, issue?.column]).toEqual(["unit_run", "toe_length_mm"]);
  expect(issue?.message).toMatch(
    /4 readings of toe length of Horse 1 by A on 2024-10-04 look like centimetres, such as \d\.\d, where 55 to 115 mm are usual/,
  );
  expect(issue?.hint).toMatch(/^If it is so, multiply these by 10: lines /);
  expect(unitRuns(inUnit(25.4, here))[0]?.message).toContain("look like inches");
});

test("an observer's run of days is told once", () => {
  const issues = unitRuns(inUnit(10, ({ observerId }) => observerId === "B"));
  expect(issues.map(({ message }) => message)).toEqual([
    expect.stringContaining("192 readings of toe length of 16 horses by B on 3 days from"),
  ]);
});

test("two slips on a day of four feet are slips of the pen", () => {
  expect(unitRuns(inUnit(10, (row) => here(row) && row.foot.startsWith("L")))).toEqual([]);
  expect(unitRuns(inUnit(10, (row) => here(row) && row.foot !== "LF"))).toHaveLength(1);
});

test("values too small to be believed are looked at too", async () => {
  const rows = ["LF", "RF", "LH", "RH"].flatMap((foot, at) => [
    `2025-01-06,Rowan,${foot},K,${String(120 + at)}`,
    `2025-02-17,Rowan,${foot},K,${String(118 + at)}`,
    `2025-03-31,Rowan,${foot},K,1${String(1 + at)}.5`,
  ]);
  const study = await studyFrom({ "visits.csv": ["visit_date,horse_id,foot,observer_id,hoof_width_mm", ...rows].join("\n") });
  expect(study.visits.filter(({ hoofWidthMm }) => hoofWidthMm === null)).toHaveLength(4);
  expect(unitRuns(study).map(({ message }) => message)).toEqual([
    expect.stringContaining("4 readings of hoof width of Rowan by K on 2025-03-31 look like centimetres, such as 11.5"),
  ]);
});
