import { describe, expect, test } from "vitest";
import { shapeAndSizeChart } from "../../src/chart/shapeAndSizeChart.js";
import { renderers, scene } from "./renderers.js";
import { sizedFeet, sizeLines, sizeOptions } from "./shapeCharts.js";

describe.each(renderers)("drawn by $name", (renderer) => {
  test("one mark a foot, and a line an end", async () => {
    const { items } = await scene(shapeAndSizeChart(sizedFeet, sizeLines, sizeOptions), renderer);
    const marks = items.filter(({ type, datum }) => type === "symbol" && datum["horseId"] !== undefined);
    expect(marks.map(({ datum }) => [datum["horseId"], datum["end"]])).toEqual([
      ["Bess", "front"],
      ["Bess", "hind"],
      ["Dot", "hind"],
    ]);
    const drawn = items.filter(({ type, datum }) => type === "line" && datum["end"] !== undefined);
    expect(new Set(drawn.map(({ datum }) => datum["end"]))).toEqual(new Set(["front", "hind"]));
  });
});

test("ranges and the finding in words", () => {
  expect(shapeAndSizeChart(sizedFeet, sizeLines, sizeOptions).reading).toBe(
    "1 front foot: size 121 to 121, Width / length 1.02 to 1.02; 2 hind feet: size 112 to 118, Width / length 0.93 to 0.95. At one size front less hind is +0.061.",
  );
});
