import { expect, test } from "vitest";
import { cohenKappa } from "../../src/estimate/cohenKappa.js";
import { seededRandom } from "../../src/estimate/numeric/seededRandom.js";
import { observerDrift, type ScoredTwice } from "../../src/estimate/observerDrift.js";
import { faultCode } from "./faultCode.js";
import { expectNear } from "./reference.js";

// The 88 subjects of the "Agreement Study" table of the SAS/STAT manual (PROC FREQ), kappa with quadratic weights 0.660722891566.
const agreement = [
  [10, 4, 1, 0],
  [5, 10, 12, 2],
  [2, 4, 12, 5],
  [0, 2, 6, 13],
];

function scored(visitDate: string, shift: (grade: number) => number = (grade) => grade): ScoredTwice[] {
  let place = 0;
  return agreement.flatMap((row, firstGrade) =>
    row.flatMap((count, second) =>
      Array.from({ length: count }, () => ({ horseId: `h${place++ % 22}`, visitDate, firstGrade, secondGrade: shift(second) })),
    ),
  );
}

const options = { random: seededRandom(3), replicates: 300 };

test("kappa of each quarter and of all is that of the published table", () => {
  const found = observerDrift([...scored("2024-02-10"), ...scored("2024-05-03")], options);
  expect(found.quarters.map(({ quarter, n, horses }) => [quarter, n, horses])).toEqual([
    ["2024-Q1", 88, 22],
    ["2024-Q2", 88, 22],
  ]);
  expectNear(
    [...found.quarters, found.all].map(({ kappa }) => kappa!.estimate),
    [0.660722891566, 0.660722891566, 0.660722891566],
    1e-10,
  );
  // The same records twice: nothing drifts.
  expectNear([found.sameKappa!.statistic], [0], 1e-9);
});

test("an eye that grows more severe is found", () => {
  const severe = (grade: number) => Math.min(3, grade + 1);
  const found = observerDrift([...scored("2024-02-10"), ...scored("2024-05-03", severe)], options);
  const [first, second] = found.quarters.map(({ difference }) => difference!.estimate!);
  // Columns of the table hold 17, 20, 31 and 20: all but the last 20 of 88 rise by 1.
  expectNear([second! - first!], [68 / 88], 1e-12);
  expect(found.sameDifference!.p!).toBeLessThan(1e-6);
  expect(found.sameDifference!.df).toBe(1);
});

test("too few pairs, one grade only, and missing grades are said", () => {
  const few = observerDrift(scored("2024-02-10").slice(0, 5), options);
  expect([few.all.kappa, few.sameKappa]).toEqual([null, null]);
  expect(few.all.note).toMatch(/^5 feet of 5 horses/);
  const flat = observerDrift(
    scored("2024-02-10").map((row) => ({ ...row, firstGrade: 0, secondGrade: 0 })),
    options,
  );
  expect(flat.all.kappa).toBeNull();
  expect(
    observerDrift([...scored("2024-02-10"), { horseId: "x", visitDate: "2024-02-11", firstGrade: null, secondGrade: 1 }], options)
      .all.missing,
  ).toBe(1);
  expect(faultCode(() => observerDrift([], options))).toBe("empty");
});

test("weights are passed on", () => {
  const linear = observerDrift(scored("2024-02-10"), { ...options, weights: "linear" });
  expect(linear.all.kappa!.estimate).toBe(cohenKappa(agreement, { weights: "linear" }).estimate);
});
