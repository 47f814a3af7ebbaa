import { expect, test } from "vitest";
import { heldToThreshold } from "../../src/derive/heldToThreshold.js";

test("each flag is held to its threshold in its own way", () => {
  const raised = (flag: Parameters<typeof heldToThreshold>[0], value: number) => heldToThreshold(flag, value, 5).raised;
  expect([raised("contracted", 4.9), raised("contracted", 5)]).toEqual([true, false]);
  expect([raised("underrun", 4.9), raised("underrun", 5)]).toEqual([false, true]);
  expect([raised("uneven", 5), raised("uneven", 5.1)]).toEqual([false, true]);
});

// Thresholds as reported: Turner 0.67 and 5 degrees; healthy from 0.70 in O'Grady; Hobbs 1.5 degrees.
test("the flag says which threshold, whose, and where it was set by the study alone", () => {
  expect(heldToThreshold("contracted", 0.6, 0.67)).toMatchObject({ value: 0.6, rule: "below", threshold: 0.67 });
  expect(heldToThreshold("contracted", 0.6, 0.67).source).toContain("Turner");
  expect(heldToThreshold("contracted", 0.6, 0.7).source).toContain("O'Grady");
  expect(heldToThreshold("uneven", 2, 1.5).source).toContain("Hobbs");
  expect(heldToThreshold("contracted", 0.6, 0.61).source).toBe("set for this study, no source given");
});
