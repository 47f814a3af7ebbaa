import { expect, test } from "vitest";
import { flipInflation } from "../../../src/estimate/fabric/flipInflation.js";
import { flipPart } from "../../../src/estimate/fabric/flipPart.js";
import { signFlips } from "../../../src/estimate/fabric/signFlips.js";
import { seededRandom } from "../../../src/estimate/numeric/seededRandom.js";

const density = (x: number, mean: number, variance: number) =>
  Math.exp(-((x - mean) ** 2) / (2 * variance)) / Math.sqrt(2 * Math.PI * variance);

test("a part is the logarithm of the likelihood ratio of the two signs", () => {
  for (const [value, expected, variance] of [
    [-3, 2, 1.5],
    [1, 2, 4],
    [0, 5, 9],
  ] as const) {
    const ratio = density(-value, expected, variance) / density(value, expected, variance);
    expect(flipPart(value, expected, variance)).toBeCloseTo(Math.log(ratio), 10);
  }
});

test("a reading far from both signs says nothing", () => {
  expect(flipPart(-10, 2, 4)).toBeCloseTo(10, 12);
  expect(flipPart(-10.1, 2, 4)).toBeNaN();
  expect(flipPart(NaN, 2, 4)).toBeNaN();
});

test("gap, information and best of a row add over the measures that were read", () => {
  const flips = signFlips(
    { columns: 3, values: [-3, 1, NaN], starts: [0, 1], days: [0] },
    { expected: [2, 2, 2], variance: [2, 4, 1] },
  );
  expect(flips).toEqual({ gap: [6 - 1], information: [8 + 4], best: [6] });
});

test("measures that change together count as one in what tells most", () => {
  const readings = { columns: 3, values: [-3, -1, -2], starts: [0, 1], days: [0] };
  const expectations = { expected: [2, 2, 2], variance: [2, 4, 4] };
  // Parts 6, 1 and 2.
  expect(signFlips(readings, expectations).best).toEqual([6]);
  expect(signFlips(readings, expectations, [0, 1, 0]).best).toEqual([8]);
});

test("measures that say the same thing over and over are found to scatter too much, independent ones are not", () => {
  const random = seededRandom("inflation");
  const rows = 4000;
  const of = (repeated: boolean) => {
    const values = Array.from({ length: rows }, () => {
      const first = random.normal(2, 1);
      return [first, ...Array.from({ length: 3 }, () => (repeated ? first : random.normal(2, 1)))];
    }).flat();
    const readings = { columns: 4, values, starts: [0, rows], days: [] };
    return flipInflation(signFlips(readings, { expected: values.map(() => 2), variance: values.map(() => 1) }));
  };
  // Four equal measures have four times the variance of the sum of four independent ones. Median of 4000 chi-squares: within a tenth.
  expect(of(true)).toBeGreaterThan(3.6);
  expect(of(true)).toBeLessThan(4.4);
  expect(of(false)).toBeLessThan(1.1);
});
