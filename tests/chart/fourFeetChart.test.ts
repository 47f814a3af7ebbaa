import { describe, expect, test } from "vitest";
import { fourFeetChart } from "../../src/chart/fourFeetChart.js";
import { renderers, scene } from "./renderers.js";
import { fourFeet, fourFeetOptions } from "./shapeCharts.js";

describe.each(renderers)("drawn by $name", (renderer) => {
  test("each measure at its place in the band, those outside marked, far ones at the edge", async () => {
    const { items } = await scene(fourFeetChart(fourFeet, fourFeetOptions), renderer);
    const marks = items.filter(({ type, datum }) => type === "symbol" && datum["place"] !== undefined).map(({ datum }) => datum);
    // 1.02 in 0.9 to 1.1 lies at 0.6; 1.30 would lie at 2, beyond the edge of 1.45; 0.9 is on the border, so within; -1 in 1 to 6 at -0.4.
    const near = (value: number) => expect.closeTo(value, 9) as number;
    expect(marks.map(({ place, out }) => [place, out])).toEqual([
      [near(0.6), false],
      [near(1.45), true],
      [near(0), false],
      [near(-0.4), true],
    ]);
    const texts = items.filter(({ type }) => type === "text").map(({ text }) => text);
    expect(texts).toEqual(expect.arrayContaining(["1.02", "1.30", "0.90", "−1.0°"]));
  });
});

test("what lies outside, in words", () => {
  expect(fourFeetChart(fourFeet, fourFeetOptions).reading).toBe(
    "Outside the bands of this herd: off fore, shape index 1.30; near hind, toe-heel gap −1.0°.",
  );
  expect(fourFeetChart(fourFeet.slice(0, 1), fourFeetOptions).reading).toBe(
    "Every measure drawn, 1 in all, lies in the band of this herd.",
  );
});
