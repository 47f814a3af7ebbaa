import { expect, test } from "vitest";
import { compared } from "../../../src/answer/words/compared.js";
import { points } from "../../../src/answer/words/points.js";
import { pointsInterval } from "../../../src/answer/words/pointsInterval.js";
import { pValue } from "../../../src/answer/words/pValue.js";
import { rounded } from "../../../src/answer/words/rounded.js";
import { signed } from "../../../src/answer/words/signed.js";
import { tooFewHorses } from "../../../src/answer/words/tooFewHorses.js";

test.each([
  [0.07, "+7 points"],
  [-0.12, "−12 points"],
  [0.01, "+1 point"],
  [0.003, "+0.3 points"],
  [0, "0.0 points"],
])("a difference of %d is %s", (value, text) => {
  expect(points(value)).toBe(text);
});

test("intervals of differences, and what may be said of them", () => {
  const of = { estimate: 0.07, lower: 0.04, upper: 0.1, level: 0.95 };
  expect(pointsInterval(of)).toBe("+7 points (95% interval +4 to +10)");
  expect(pointsInterval({ ...of, lower: null })).toBe("+7 points (too little for an interval)");
  const words = { above: "more", below: "less", unclear: "not told apart" };
  expect(compared(of, 0, words)).toBe("more");
  expect(compared({ lower: -0.2, upper: -0.1 }, 0, words)).toBe("less");
  expect(compared({ lower: 0, upper: 0.1 }, 0, words)).toBe("not told apart");
  expect(compared({ lower: null, upper: null }, 0, words)).toBe("not told apart");
});

test("numbers never show a negative zero, an infinite limit or a p value of nothing", () => {
  expect([rounded(-0.04, 1), rounded(-1.55, 1), rounded(Infinity, 1)]).toEqual(["0.0", "−1.6", "no limit"]);
  expect([signed(0.04, 1), signed(3.24, 1), signed(-0.5, 1)]).toEqual(["0.0", "+3.2", "−0.5"]);
  expect([pValue(0.0321), pValue(1e-9), pValue(1)]).toEqual(["p 0.032", "p under 0.001", "p over 0.999"]);
});

test("too few horses, in the singular, the plural and none", () => {
  const [one, three, none] = [1, 3, 0].map((n) => tooFewHorses(n, 5, "a graded frog", "give no share"));
  expect(one).toBe("1 horse has a graded frog; fewer than 5 give no share.");
  expect(three).toBe("3 horses have a graded frog; fewer than 5 give no share.");
  expect(none).toBe("No horses have a graded frog; fewer than 5 give no share.");
});
