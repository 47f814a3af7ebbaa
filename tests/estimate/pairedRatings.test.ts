import { expect, test } from "vitest";
import { pairedRatings } from "../../src/estimate/pairedRatings.js";
import { faultCode } from "./faultCode.js";

test("pairs are counted by the categories of both observers, missing ones apart", () => {
  const pairs = [
    { first: 0, second: 0 },
    { first: 0, second: 1 },
    { first: 2, second: 1 },
    { first: 2, second: null },
    { first: null, second: null },
    { first: 0, second: 1 },
  ];
  expect(pairedRatings(pairs, [0, 1, 2])).toEqual({
    matrix: [
      [1, 2, 0],
      [0, 0, 0],
      [0, 1, 0],
    ],
    n: 4,
    missing: 2,
  });
});

test("a rating outside the categories is refused", () => {
  expect(faultCode(() => pairedRatings([{ first: "clear", second: "bad" }], ["clear", "mild"]))).toBe("out_of_range");
});
