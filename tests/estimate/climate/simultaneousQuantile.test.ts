import { expect, test } from "vitest";
import { simultaneousQuantile } from "../../../src/estimate/climate/simultaneousQuantile.js";
import { normalQuantile } from "../../../src/estimate/numeric/normalQuantile.js";
import { seededRandom } from "../../../src/estimate/numeric/seededRandom.js";
import { tQuantile } from "../../../src/estimate/numeric/tQuantile.js";

const identity = (size: number) =>
  Array.from({ length: size }, (_, i) => Array.from({ length: size }, (_v, j) => Number(i === j) * (i + 1)));

// Independent contrasts have a closed form: Sidak Z (1967) J Am Stat Assoc 62:626-633. 10,000 draws leave about 0.02.
test.each([1, 2, 6])("%d independent contrasts", (size) => {
  const found = simultaneousQuantile(identity(size), identity(size), 0.95, null, seededRandom(size));
  expect(Math.abs(found - normalQuantile((1 + 0.95 ** (1 / size)) / 2))).toBeLessThan(0.05);
});

test("the same contrast many times counts once; few degrees of freedom widen it", () => {
  const twice = [
    [1, 1],
    [2, 2],
    [-1, -1],
  ];
  expect(Math.abs(simultaneousQuantile(identity(2), twice, 0.95, null, seededRandom(1)) - 1.959964)).toBeLessThan(0.05);
  expect(Math.abs(simultaneousQuantile(identity(2), twice, 0.95, 5, seededRandom(1)) - tQuantile(0.975, 5))).toBeLessThan(0.12);
});
