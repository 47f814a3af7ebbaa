import { describe, expect, test } from "vitest";
import { frontHindShapeChart } from "../../src/chart/frontHindShapeChart.js";
import { horses, shapeOptions } from "./charts.js";
import { renderers, scene } from "./renderers.js";

describe.each(renderers)("drawn by $name", (renderer) => {
  test("one mark a horse with both pairs measured, and the medians as given", async () => {
    const { items } = await scene(frontHindShapeChart(horses, shapeOptions), renderer);
    const symbols = items.filter((item) => item.type === "symbol").map((item) => item.datum);
    expect(symbols.map((datum) => datum["horseId"])).toEqual(["Bess", "Captain", "Dot", "Ember", undefined]);
    expect(symbols.at(-1)).toMatchObject({ frontIndex: 0.97, hindIndex: 0.95 });
  });

  test("both scales are the same, so that the line of equality is the diagonal", async () => {
    const { compiled } = await scene(frontHindShapeChart(horses, shapeOptions), renderer);
    const { scales } = compiled as { readonly scales: readonly { readonly name: string; readonly domain: unknown }[] };
    const [x, y] = ["x", "y"].map((name) => scales.find((scale) => scale.name === name)?.domain);
    expect(x).toEqual(y);
    const [low, high] = x as [number, number];
    expect(low).toBeLessThan(0.91);
    expect(high).toBeGreaterThan(1.01);
  });
});

test("horses on either side, equal ones and unmeasured ones are all accounted for", () => {
  const { title, reading } = frontHindShapeChart(horses, shapeOptions);
  expect(title).toBe("Front feet were wider for their length than hind feet in 2 of 4 horses");
  expect(reading).toBe(
    "Of 4 horses, 2 had rounder front feet and 1 rounder hind feet; in 1 the two were equal. Median width over length: 0.97 in front, 0.95 behind. 1 horse had not both pairs measured and is not drawn.",
  );
});

test("without a pair, words stand instead", () => {
  expect(frontHindShapeChart([], { ...shapeOptions, medians: null }).reading).toBe("No hoof has been measured yet.");
  const half = frontHindShapeChart(horses.slice(4), { ...shapeOptions, medians: null });
  expect(half.reading).toBe("No horse has both front and hind feet measured.");
  expect(half.table.rows).toEqual([{ horseId: "Flint", frontIndex: null, hindIndex: 0.93 }]);
});
