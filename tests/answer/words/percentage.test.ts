import fc from "fast-check";
import { expect, test } from "vitest";
import { percentage } from "../../../src/answer/words/percentage.js";

test("whole percentages, and no certainty out of rounding", () => {
  expect(percentage(0.3704)).toBe("37%");
  expect(percentage(0)).toBe("0%");
  expect(percentage(1)).toBe("100%");
  expect(percentage(0.004)).toBe("under 1%");
  expect(percentage(0.998)).toBe("over 99%");
});

test("0% and 100% are said only of exactly 0 and 1", () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (p) => {
      const said = percentage(p);
      expect(said === "0%").toBe(p === 0);
      expect(said === "100%").toBe(p === 1);
    }),
  );
});

test("what is no proportion is refused", () => {
  expect(() => percentage(Number.NaN)).toThrow("between 0 and 1");
  expect(() => percentage(-0.1)).toThrow("between 0 and 1");
});
