import { expect, test } from "vitest";
import { xoshiro128 } from "../../../src/estimate/numeric/xoshiro128.js";

// Numbers of the Rust crate rand_xoshiro 0.6.0 (Xoshiro128StarStar, rustc, state words 1, 2, 3, 4 little-endian), from a program that
// prints next_u32: the first twelve, the 1,000th, the 100,000th, and all of them combined by exclusive or.
test("the numbers are those of another library", () => {
  const next = xoshiro128([1, 2, 3, 4]);
  const numbers = Array.from({ length: 100_000 }, next);
  expect(numbers.slice(0, 12)).toEqual([
    11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804, 337829053, 2142557243,
  ]);
  expect(numbers[999]).toBe(3170714187);
  expect(numbers[99_999]).toBe(3017257022);
  expect(numbers.reduce((all, number) => (all ^ number) >>> 0, 0)).toBe(1873093019);
});
