import { expect, test } from "vitest";
import { shapeFlags } from "../../src/derive/shapeFlags.js";
import { defaultSettings } from "../../src/study/defaultSettings.js";

const flags = (frogIndex: number | null, toeHeelGapDeg: number | null, species: Parameters<typeof shapeFlags>[1] = "horse") =>
  shapeFlags({ frogIndex, toeHeelGapDeg }, species, defaultSettings);

// Thresholds of Turner, objective assessment of hoof balance: contracted below 0.67, underrun from 5 degrees on.
test("contracted below its threshold, underrun at and above it", () => {
  expect(flags(0.66, 4.9)).toEqual({ contracted: true, underrun: false });
  expect(flags(0.67, 5)).toEqual({ contracted: false, underrun: true });
});

test("thresholds are settings", () => {
  const settings = { contractedFrogIndex: 0.5, underrunGapDeg: 10 };
  expect(shapeFlags({ frogIndex: 0.55, toeHeelGapDeg: 8 }, "horse", settings)).toEqual({ contracted: false, underrun: false });
});

test("horses, ponies and unknown species have flags; donkeys and mules do not", () => {
  expect(flags(0.5, 9, "pony")).toEqual({ contracted: true, underrun: true });
  expect(flags(0.5, 9, null)).toEqual({ contracted: true, underrun: true });
  expect(flags(0.5, 9, "donkey")).toEqual({ contracted: null, underrun: null });
  expect(flags(0.5, 9, "mule")).toEqual({ contracted: null, underrun: null });
});

test("without a measure there is no flag", () => {
  expect(flags(null, null)).toEqual({ contracted: null, underrun: null });
});
