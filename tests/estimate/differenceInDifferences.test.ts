import { expect, test } from "vitest";
import { differenceInDifferences, type YardLook } from "../../src/estimate/differenceInDifferences.js";
import { seededRandom } from "../../src/estimate/numeric/seededRandom.js";
import { climateReference } from "./climateReference.js";
import { faultCode } from "./faultCode.js";
import { expectNear } from "./reference.js";

// Changes of a yard and five others, by lm in R (references.R): 100 looks in each of three months before and after.
const changes = [-0.21, 0.04, -0.03, 0.09, -0.06, 0.01];
const looks = changes.flatMap((change, yard) => {
  const before = [10, 11, 12].map((month, k) => [`2024-${month}-10`, 40 + 5 * k] as const);
  const after = [10, 11, 12].map((month, k) => [`2025-${month}-10`, 40 + 5 * k + 100 * change] as const);
  return [...before, ...after].flatMap(([visitDate, cases]) =>
    Array.from({ length: 100 }, (_, place): YardLook => ({
      yardId: `y${yard}`,
      horseId: `y${yard} h${place % 10}`,
      visitDate,
      case: place < Math.round(cases),
    })),
  );
});
const options = { yardId: "y0", changedOn: "2025-06-01", random: seededRandom(1), replicates: 200 };

test("the t test of one changed group against the spread of the others, as lm in R", () => {
  const found = differenceInDifferences(looks, options);
  if (found.kind !== "difference") throw new Error(found.reason);
  expectNear([found.estimate], climateReference("one changed", "estimate"), 1e-12);
  expectNear([found.lower, found.upper], climateReference("one changed", "limits"), 1e-10);
  expectNear([found.changed, found.controls], [-0.21, 0.01], 1e-12);
  expect([found.months.length, found.controlYards.length, found.horses, found.n, found.missing]).toEqual([3, 5, 10, 600, 0]);
  expectNear([found.placeboP], [1 / 6], 1e-14);
  expect(found.bootstrap!.lower < found.estimate! && found.estimate! < found.bootstrap!.upper).toBe(true);
});

test("months are matched: a month seen on one side only does not count", () => {
  const extra = Array.from({ length: 300 }, (): YardLook => ({
    yardId: "y0",
    horseId: "y0 h0",
    visitDate: "2025-07-01",
    case: true,
  }));
  const found = differenceInDifferences([...looks, ...extra], options);
  if (found.kind !== "difference") throw new Error(found.reason);
  expectNear([found.estimate], climateReference("one changed", "estimate"), 1e-12);
});

test.each([
  ["one month", looks.filter(({ visitDate }) => visitDate.slice(5, 7) === "10"), /1 months of the year/],
  ["no controls", looks.filter(({ yardId }) => yardId === "y0"), /0 other yards/],
  ["two horses", looks.filter(({ yardId, horseId }) => yardId !== "y0" || horseId < "y0 h2"), /2 horses/],
  ["only after", looks.filter(({ visitDate }) => visitDate > "2025-06"), /0 months/],
] as const)("%s: it cannot tell, and says why", (_, rows, reason) => {
  const found = differenceInDifferences(rows, options);
  expect(found.kind).toBe("cannot_tell");
  if (found.kind === "cannot_tell") expect(found.reason).toMatch(reason);
});

test("a yard never seen, or a day that is none, is refused", () => {
  expect(faultCode(() => differenceInDifferences(looks, { ...options, yardId: "none" }))).toBe("empty");
  expect(faultCode(() => differenceInDifferences(looks, { ...options, changedOn: "June" }))).toBe("not_a_date");
});
