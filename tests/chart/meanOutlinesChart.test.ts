import { describe, expect, test } from "vitest";
import { meanOutlinesChart } from "../../src/chart/meanOutlinesChart.js";
import { renderers, scene } from "./renderers.js";
import { means, outlinesTaken } from "./shapeCharts.js";

describe.each(renderers)("drawn by $name", (renderer) => {
  test("a closed line for each mean, and a band that goes out and back", async () => {
    const { items } = await scene(meanOutlinesChart(means, outlinesTaken), renderer);
    const lines = items.filter(({ type }) => type === "line");
    // Two pieces of axis of two places; bands of twice 61, means of 61.
    const counts = lines.map(({ datum }) => Number(datum["order"] ?? -1));
    expect(counts.filter((order) => order === 0)).toHaveLength(4);
    expect(counts.filter((order) => order === 121)).toHaveLength(2);
    expect(counts.filter((order) => order === 60)).toHaveLength(4);
  });

  test("the foot is as wide as it is long on the page when it is so in the numbers", async () => {
    const { compiled } = await scene(meanOutlinesChart(means.slice(0, 1), outlinesTaken), renderer);
    const { scales, width, height } = compiled as {
      readonly scales: readonly { readonly name: string; readonly domain: readonly [number, number] }[];
      readonly width: number;
      readonly height: number;
    };
    const span = (name: string) => {
      const [low, high] = scales.find((scale) => scale.name === name)!.domain;
      return high - low;
    };
    expect(width / span("x") / (height / span("y"))).toBeCloseTo(1, 2);
  });
});

test("the reading gives the width of each end", () => {
  expect(meanOutlinesChart(means, outlinesTaken).reading).toBe(
    "Front feet: mean of 40 outlines of 12 horses, 1.00 wide where the common mean is 1 long. Hind feet: mean of 1 outline of 1 horse, 0.90 wide where the common mean is 1 long.",
  );
  expect(meanOutlinesChart([], outlinesTaken).reading).toBe("No outline of a foot of known side can be used.");
});
