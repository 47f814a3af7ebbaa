import { expect, test } from "vitest";
import { type BoundedRow, missingBounds } from "../../src/estimate/missingBounds.js";
import { faultCode } from "./faultCode.js";
import { expectNear } from "./reference.js";

function rowsOf(cluster: string, exposed: boolean, cases: number, clear: number, missing: number): BoundedRow[] {
  const many = (count: number, found: boolean | null) => Array.from({ length: count }, () => ({ case: found, exposed, cluster }));
  return [...many(cases, true), ...many(clear, false), ...many(missing, null)];
}

const rows = ["a", "b", "c"].flatMap((cluster, k) => [...rowsOf(cluster, true, 4 + k, 4, 2), ...rowsOf(cluster, false, 2, 7, 1)]);

test("bounds of a prevalence and a difference by hand", () => {
  // Exposed: 15 cases, 12 clear, 6 missing of 33. Unexposed: 6 cases, 21 clear, 3 missing of 30.
  const { prevalence, difference } = missingBounds(rows);
  expectNear([prevalence.observed, prevalence.lowest, prevalence.highest], [21 / 54, 21 / 63, 30 / 63], 1e-14);
  expect([prevalence.n, prevalence.missing, prevalence.clusters]).toEqual([54, 9, 3]);
  expectNear(
    [difference!.observed, difference!.lowest, difference!.highest],
    [15 / 27 - 6 / 27, 15 / 33 - 9 / 30, 21 / 33 - 6 / 30],
    1e-13,
  );
  expect(difference!.lower! < difference!.lowest && difference!.highest < difference!.upper!).toBe(true);
});

test("limits of the difference are those of a jackknife written out", () => {
  // Lowest difference without each of the clusters; 4.302653 is the 0.975 quantile of t with 2 degrees of freedom (R 4.2.2 qt).
  const without = [11 / 23 - 6 / 20, 10 / 22 - 6 / 20, 9 / 21 - 6 / 20];
  const mean = without.reduce((sum, value) => sum + value, 0) / 3;
  const se = Math.sqrt((2 / 3) * without.reduce((sum, value) => sum + (value - mean) ** 2, 0));
  expectNear([missingBounds(rows).difference!.lower], [15 / 33 - 9 / 30 - 4.30265272974946 * se], 1e-10);
});

test("nothing missing: the bounds meet", () => {
  const { prevalence, difference } = missingBounds(rows.filter((row) => row.case !== null));
  expect([prevalence.lowest, prevalence.highest]).toEqual([prevalence.observed, prevalence.observed]);
  expectNear([difference!.lowest, difference!.highest], [1 / 3, 1 / 3], 1e-14);
});

test("exposure that is not known counts in the prevalence only; no rows are refused", () => {
  const found = missingBounds([...rows, { case: true, exposed: null, cluster: "a" }]);
  expect([found.exposureMissing, found.prevalence.n, found.difference!.n]).toEqual([1, 55, 54]);
  expect(missingBounds([{ case: true, cluster: "a" }]).difference).toBeNull();
  expect(faultCode(() => missingBounds([]))).toBe("empty");
});
