import { expect, test } from "vitest";
import { markFlip } from "../../../src/estimate/fabric/markFlip.js";

const earlier = { belowCoronetMm: 10, daysBefore: 40 };

test("a track that is where horn has taken it, on the other foot, speaks for an exchange", () => {
  // 40 days at 0.255 mm: 20 mm.
  expect(markFlip([null, 20], [earlier, null], 0.01)).toBeGreaterThan(5);
  expect(markFlip([20, null], [earlier, null], 0.01)).toBeLessThan(-5);
  expect(markFlip([20, null], [earlier, null], 0.01)).toBeCloseTo(-markFlip([null, 20], [earlier, null], 0.01), 12);
});

test("a track that may have grown out, or feet without one, say nothing", () => {
  expect(markFlip([null, 20], [{ belowCoronetMm: 50, daysBefore: 60 }, null], 0.01)).toBeCloseTo(0, 12);
  expect(markFlip([20, null], [null, null], 0.01)).toBeCloseTo(0, 12);
});
