import { expect, test } from "vitest";
import { levelText } from "../../../src/chart/parts/levelText.js";

test("a level is written in full", () => {
  expect([0.5, 0.95, 0.975, 0.999, 0.9999999].map(levelText)).toEqual(["50%", "95%", "97.5%", "99.9%", "99.99999%"]);
  // 1 - 0.95 is 0.050000000000000044.
  expect(levelText(1 - 0.95)).toBe("5%");
});
