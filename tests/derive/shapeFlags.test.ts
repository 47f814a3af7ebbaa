import { expect, test } from "vitest";
import { shapeFlags } from "../../src/derive/shapeFlags.js";
import { defaultSettings } from "../../src/study/defaultSettings.js";

const flags = (frogIndex: number | null, toeHeelGapDeg: number | null, species: Parameters<typeof shapeFlags>[1] = "horse") =>
  shapeFlags({ frogIndex, toeHeelGapDeg }, species, defaultSettings);

// Thresholds of Turner, objective assessment of hoof balance: contracted below 0.67, underrun from 5 degrees on.
test("contracted below its threshold, underrun at and above it", () => {
  expect(flags(0.66, 4.9)).toMatchObject({ contracted: true, underrun: false });
  expect(flags(0.67, 5)).toMatchObject({ contracted: false, underrun: true });
});

test("thresholds are settings", () => {
  const settings = { contractedFrogIndex: 0.5, underrunGapDeg: 10 };
  expect(shapeFlags({ frogIndex: 0.55, toeHeelGapDeg: 8 }, "horse", settings)).toMatchObject({
    contracted: false,
    underrun: false,
  });
});

test("horses, ponies and unknown species have flags; donkeys and mules do not", () => {
  expect(flags(0.5, 9, "pony")).toMatchObject({ contracted: true, underrun: true });
  expect(flags(0.5, 9, null)).toMatchObject({ contracted: true, underrun: true });
  expect(flags(0.5, 9, "donkey")).toMatchObject({ contracted: null, underrun: null });
  expect(flags(0.5, 9, "mule")).toMatchObject({ contracted: null, underrun: null });
});

test("without a measure there is no flag", () => {
  expect(flags(null, null)).toMatchObject({ contracted: null, underrun: null });
});

test("each flag that could be judged carries value, threshold and source; another species has none", () => {
  expect(flags(0.6, null).flags).toEqual([
    {
      ...{ flag: "contracted", raised: true, value: 0.6, rule: "below", threshold: 0.67 },
      source: expect.stringContaining("Turner") as string,
    },
  ]);
  expect(flags(0.8, 5).flags.map(({ flag, raised }) => [flag, raised])).toEqual([
    ["contracted", false],
    ["underrun", true],
  ]);
  expect(flags(0.6, 9, "mule").flags).toEqual([]);
});
