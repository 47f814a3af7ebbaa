import { expect, test } from "vitest";
import { containmentDf } from "../../../src/estimate/mixed/containmentDf.js";
import { referenceRows } from "../reference.js";

test("R nlme 3.1: lme(y ~ wet + hind + age, random = ~1 | yard/horse)$fixDF$X, age = as.numeric(factor(horse)) %% 13", () => {
  const rows = referenceRows("sim-nested-feet.csv");
  const numbered = (column: string) => {
    const names = [...new Set(rows.map((row) => row[column]))].sort();
    return Int32Array.from(rows, (row) => names.indexOf(row[column]));
  };
  const [yard, horse] = [numbered("yard"), numbered("horse")];
  const columns = [
    rows.map(() => 1),
    rows.map(({ wet }) => Number(wet)),
    rows.map(({ hind }) => Number(hind)),
    [...horse].map((number) => (number + 1) % 13),
  ].map((column) => Float64Array.from(column));
  // There the intercept goes with the innermost level (491); here with the outermost, like wet.
  expect(containmentDf(columns, [yard, horse], rows.length)).toEqual([22, 22, 491, 139]);
});

test("one kind of group; nothing left", () => {
  const group = Int32Array.of(0, 0, 1, 1, 2, 2);
  const columns = [
    [1, 1, 1, 1, 1, 1],
    [0, 1, 0, 1, 0, 1],
  ].map((column) => Float64Array.from(column));
  expect(containmentDf(columns, [group], 6)).toEqual([2, 2]);
  const between = Float64Array.of(5, 5, 7, 7, 9, 9);
  expect(containmentDf([columns[0]!, between, between.map((value) => value ** 2)], [group], 6)).toEqual([0, 0, 0]);
});
