import { expect, test } from "vitest";
import { prevalence } from "../../src/estimate/prevalence.js";
import { prevalenceBy } from "../../src/estimate/prevalenceBy.js";
import { faultCode } from "./faultCode.js";

interface Row {
  case: boolean | null;
  horseId: string;
  yardId: string | null;
  band: string | null;
}

const rowsOf = (band: string | null, horses: number, cases: number): Row[] =>
  Array.from({ length: horses }, (_, i) => ({ case: i < cases, horseId: `${band ?? "?"} ${i}`, yardId: "home", band }));

const rows = [...rowsOf("wet", 8, 5), ...rowsOf("dry", 6, 1), ...rowsOf("soaked", 3, 3), ...rowsOf(null, 2, 1)];

test("groups stand in the order asked for, empty ones too, others after by name", () => {
  const { groups, ungrouped } = prevalenceBy(rows, (row) => row.band, { order: ["dry", "damp", "wet"] });
  expect(groups.map((group) => [group.group, group.rows, group.horses])).toEqual([
    ["dry", 6, 6],
    ["damp", 0, 0],
    ["wet", 8, 8],
    ["soaked", 3, 3],
  ]);
  expect(ungrouped).toBe(2);
  expect(prevalenceBy(rows, (row) => row.band).groups.map((group) => group.group)).toEqual(["dry", "soaked", "wet"]);
});

test("a group is what prevalence makes of its rows alone", () => {
  const { groups } = prevalenceBy(rows, (row) => row.band, { level: 0.9 });
  expect(groups[2]!.prevalence).toEqual(prevalence(rowsOf("wet", 8, 5), { level: 0.9 }));
});

test("fewer than five horses get no estimate, three do when asked for", () => {
  const soaked = prevalenceBy(rows, (row) => row.band).groups[1]!;
  expect([soaked.prevalence, soaked.horses]).toEqual([null, 3]);
  expect(soaked.note).toMatch(/^3 horses .* fewer than 5/);
  const kept = prevalenceBy(rows, (row) => row.band, { minimumHorses: 3 }).groups[1]!;
  expect([kept.prevalence!.horse.cases, kept.note]).toEqual([3, null]);
});

test("horses whose finding is not known do not make a group large enough", () => {
  const unknown = rowsOf("wet", 7, 0).map((row, i) => (i < 4 ? row : { ...row, case: null }));
  expect(prevalenceBy(unknown, (row) => row.band).groups[0]).toMatchObject({ horses: 4, rows: 7, prevalence: null });
  expect(prevalenceBy(rowsOf("wet", 3, 1).map((row) => ({ ...row, case: null })), (row) => row.band, { minimumHorses: 0 }).groups[0]!.prevalence).toBeNull(); // prettier-ignore
});

test("half horses are refused", () => {
  expect(faultCode(() => prevalenceBy(rows, (row) => row.band, { minimumHorses: 2.5 }))).toBe("not_a_count");
});
