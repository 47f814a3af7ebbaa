import { expect, test } from "vitest";
import { chiSquareUpper } from "../../../src/estimate/numeric/chiSquareUpper.js";
import { normalUpper } from "../../../src/estimate/numeric/normalUpper.js";
import { seededRandom } from "../../../src/estimate/numeric/seededRandom.js";

const n = 100_000;
const drawn = (draw: () => number) => Array.from({ length: n }, draw);
const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

/** p-value of Pearson's test that counts follow these probabilities. */
function fit(values: readonly number[], cells: readonly number[], cellOf: (value: number) => number): number {
  const counts = cells.map(() => 0);
  for (const value of values) counts[cellOf(value)]!++;
  const distance = counts.reduce((sum, count, cell) => sum + (count - n * cells[cell]!) ** 2 / (n * cells[cell]!), 0);
  return chiSquareUpper(distance, cells.length - 1);
}

// The seeds are fixed, so these tests give the same result every time; with a sound generator one seed in a thousand would fail.
const believable = 0.001;

test("the same seed gives the same numbers, another seed others", () => {
  const draws = (seed: string | number) => Array.from({ length: 50 }, seededRandom(seed).uniform);
  expect(draws(7)).toEqual(draws(7));
  expect(draws(7)).toEqual(draws("7"));
  expect(draws(7)).not.toEqual(draws(8));
});

test("a named stream does not depend on what was drawn before", () => {
  const fresh = seededRandom(1);
  const used = seededRandom(1);
  for (let draw = 0; draw < 10; draw++) used.uniform();
  expect(used.stream("rain").uniform()).toBe(fresh.stream("rain").uniform());
  const firsts = new Set(Array.from({ length: 20_000 }, (_, replicate) => seededRandom(1).stream(replicate).uniform()));
  expect(firsts.size).toBe(20_000);
});

test("uniform: open interval, even over a hundred cells, no memory from one draw to the next", () => {
  const values = drawn(seededRandom("uniform").uniform);
  expect(values.every((value) => value > 0 && value < 1)).toBe(true);
  expect(fit(values, Array<number>(100).fill(0.01), (value) => Math.floor(value * 100))).toBeGreaterThan(believable);
  const lagged = mean(values.slice(1).map((value, place) => (value - 0.5) * (values[place]! - 0.5)));
  // Standard error of the lag-one covariance of a uniform is (1/12) / sqrt(n) = 0.00026; four of them.
  expect(Math.abs(lagged)).toBeLessThan(0.00106);
});

test("streams of neighbouring names are not alike", () => {
  const values = Array.from({ length: n }, (_, name) => seededRandom("root").stream(name).uniform());
  expect(fit(values, Array<number>(100).fill(0.01), (value) => Math.floor(value * 100))).toBeGreaterThan(believable);
});

test("normal: the distribution function of another library over ten equal cells, mean and spread as asked", () => {
  const random = seededRandom("normal");
  const values = drawn(() => random.normal(3, 2));
  const cell = (value: number) => Math.min(9, Math.floor(normalUpper((value - 3) / 2) * 10));
  expect(fit(values, Array<number>(10).fill(0.1), cell)).toBeGreaterThan(believable);
  // Four standard errors: 2 / sqrt(n) for the mean, 2 / sqrt(2 n) for the spread.
  expect(Math.abs(mean(values) - 3)).toBeLessThan(0.0253);
  const spread = Math.sqrt(mean(values.map((value) => (value - 3) ** 2)));
  expect(Math.abs(spread - 2)).toBeLessThan(0.0179);
});

test("integer: both ends included, all values equally likely, also where the range does not divide 2^32", () => {
  const random = seededRandom("integer");
  expect(
    fit(
      drawn(() => random.integer(-2, 4)),
      Array<number>(7).fill(1 / 7),
      (value) => value + 2,
    ),
  ).toBeGreaterThan(believable);
  // Without rejection the lower third of this range would be drawn twice as often.
  const wide = drawn(() => random.integer(0, 3_221_225_471));
  expect(
    fit(wide, [1 / 3, 1 / 3, 1 / 3], (value) => Math.floor(value / 1_073_741_824)),
    "3 * 2^30 values",
  ).toBeGreaterThan(believable);
});

test("poisson: probabilities exp(-m) m^k / k! below and above the split", () => {
  for (const m of [0.3, 4, 40]) {
    const random = seededRandom(`poisson ${m}`);
    const values = drawn(() => random.poisson(m));
    const top = Math.ceil(m + 2.5 * Math.sqrt(m));
    const cells = [Math.exp(-m)];
    for (let k = 1; k < top; k++) cells.push((cells[k - 1]! * m) / k);
    // Cells too thin for the chi-square distribution are joined to their neighbour.
    const start = cells.findIndex((p) => p * n >= 20);
    const joined = [cells.slice(0, start + 1).reduce((a, b) => a + b, 0), ...cells.slice(start + 1)];
    joined.push(1 - joined.reduce((a, b) => a + b, 0));
    expect(
      fit(values, joined, (value) => Math.min(Math.max(value, start) - start, joined.length - 1)),
      `mean ${m}`,
    ).toBeGreaterThan(believable);
  }
  expect(seededRandom(1).poisson(0)).toBe(0);
});

test("bernoulli and pick", () => {
  const random = seededRandom("coins");
  const share = mean(drawn(() => (random.bernoulli(0.2) ? 1 : 0)));
  // Four standard errors of a share of 0.2.
  expect(Math.abs(share - 0.2)).toBeLessThan(4 * Math.sqrt(0.16 / n));
  expect(random.bernoulli(0)).toBe(false);
  expect(random.bernoulli(1)).toBe(true);
  const picked = drawn(() => ["a", "b", "c"].indexOf(random.pick(["a", "b", "c"])));
  expect(fit(picked, [1 / 3, 1 / 3, 1 / 3], (value) => value)).toBeGreaterThan(believable);
});

test("what cannot be drawn is refused", () => {
  const random = seededRandom(1);
  expect(() => random.pick([])).toThrow("nothing to pick");
  expect(() => random.bernoulli(1.2)).toThrow("probability");
  expect(() => random.normal(0, -1)).toThrow("standard deviation");
  expect(() => random.poisson(-1)).toThrow("mean");
  expect(() => random.integer(3, 2)).toThrow("no range");
  expect(() => random.normal(Number.NaN)).toThrow("mean");
});
