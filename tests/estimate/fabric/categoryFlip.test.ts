import { expect, test } from "vitest";
import { categoryFlip } from "../../../src/estimate/fabric/categoryFlip.js";

test("a dark and a light foot that changed words: the likelihood by hand", () => {
  // Five looks each; two words met, so that a word never seen has 0.2 of 5.4, and one always seen 5.2 of 5.4.
  const ratio = (5.2 / 0.2) ** 2;
  expect(
    categoryFlip(
      [1, 0],
      [
        [5, 0, 0],
        [0, 5, 0],
      ],
      2,
    ),
  ).toBeCloseTo(Math.log(ratio), 12);
  expect(
    categoryFlip(
      [0, 1],
      [
        [5, 0, 0],
        [0, 5, 0],
      ],
      2,
    ),
  ).toBeCloseTo(-Math.log(ratio), 12);
});

test("feet of one colour, or with a short history, say nothing", () => {
  expect(
    categoryFlip(
      [0, 1],
      [
        [5, 0, 0],
        [5, 0, 0],
      ],
      2,
    ),
  ).toBeCloseTo(0, 12);
  expect(
    categoryFlip(
      [0, 0],
      [
        [5, 0, 0],
        [0, 5, 0],
      ],
      2,
    ),
  ).toBe(0);
  expect(
    categoryFlip(
      [1, 0],
      [
        [1, 0, 0],
        [0, 5, 0],
      ],
      2,
    ),
  ).toBe(0);
});
