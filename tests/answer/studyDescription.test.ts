import { expect, test } from "vitest";
import { studyDescription } from "../../src/answer/studyDescription.js";
import { answered } from "./climateAnswer.js";
import { herd } from "./herd.js";
import { seasonHerd } from "./seasonHerd.js";

// Two yards, six horses, near fore and near hind. By hand: 12 looks at feet graded twice.
const study = herd({
  A: [
    ["2025-01-01", 0, 1],
    ["2025-02-12", 0, 1],
  ],
  B: [
    ["2025-01-01", 0, 0],
    ["2025-02-12", 0, 2],
  ],
  C: [
    ["2025-01-01", 0, 1],
    ["2025-02-12", 0, 0],
  ],
  D: [
    ["2025-01-01", 0, 0],
    ["2025-02-12", 0, 0],
  ],
  E: [
    ["2025-01-01", 1, 0],
    ["2025-02-12", 0, null],
  ],
});

test("levels, persistence, severity and the paired comparison by hand", () => {
  const { tables } = answered(studyDescription(study));
  const [levels, courses, severity, , ends] = tables;
  // 5 case feet of 19 graded, one foot missing.
  expect(levels!.rows[0]).toMatchObject({ cases: 5, n: 19, missing: 1 });
  // Horse gaps that begin clear: B (a case after) and D (none): equal gaps of 42 days, so -ln(1/2) / 42 a day.
  expect(courses!.rows[0]).toMatchObject({ events: 1, n: 2 });
  expect(Number(courses!.rows[0]!["estimate"])).toBeCloseTo((Math.log(2) / 42) * 3043.75, 6);
  // Case feet seen again: A hind still, C hind cleared, E fore cleared.
  expect(courses!.rows[3]).toMatchObject({ events: 1, n: 3 });
  expect(Number(courses!.rows[3]!["estimate"])).toBeCloseTo(1 / 3, 12);
  expect(severity!.rows.map((row) => row["feet"])).toEqual([14, 4, 1, 0]);
  // Visits that differ within the horse: A twice, B, C hind only; E fore only: 4 against 1.
  expect(Number(ends!.rows[0]!["estimate"])).toBeCloseTo(4, 6);
});

test("a district: every line says its n and method", () => {
  for (const table of answered(studyDescription(seasonHerd())).tables.slice(0, 2)) {
    for (const row of table.rows) expect([row["n"] === null, row["method"]]).not.toEqual([false, ""]);
  }
});

test("a share below one in a hundred begins its sentence like any other", () => {
  const names = Array.from({ length: 300 }, (_, place) => `H${place}`);
  const rare = herd(Object.fromEntries(names.map((name, place) => [name, [["2025-01-01", 0, place === 0 ? 1 : 0]] as const])));
  expect(answered(studyDescription(rare)).sentence).toMatch(/^Under 1% /);
});

test("three horses are too few", () => {
  const reply = studyDescription({ ...study, visits: study.visits.filter(({ horseId }) => horseId < "D") });
  expect(reply.kind === "not_enough_data" && reply.reason).toBe("3 horses have a graded frog; fewer than 5 give no share.");
});
