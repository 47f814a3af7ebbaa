import { describe, expect, test } from "vitest";
import { prevalenceCurveChart } from "../../src/chart/prevalenceCurveChart.js";
import { curve, curveOptions, raw } from "./climateCharts.js";
import { renderers, scene } from "./renderers.js";

describe.each(renderers)("drawn by $name", (renderer) => {
  test("a circle for each raw share with its number of feet", async () => {
    const { items } = await scene(prevalenceCurveChart(curve, raw, curveOptions), renderer);
    expect(items.filter((item) => item.type === "symbol").map((item) => item.datum["share"])).toEqual([0.12, 0.26]);
    // Each written twice: paper around it first, so that it stays legible on the line.
    expect(items.filter((item) => item.type === "text").map((item) => item.text)).toEqual(["310", "305", "310", "305"]);
  });
});

test("curve and raw shares stand in the table", () => {
  const { rows } = prevalenceCurveChart(curve, raw, curveOptions).table;
  expect(rows.map((row) => row["n"])).toEqual([null, null, null, null, 310, 305]);
});

test("the reading goes from the lowest to the highest exposure", () => {
  expect(prevalenceCurveChart(curve, raw, curveOptions).reading).toBe("From 10% (6% to 15%) at 0 to 25% (18% to 36%) at 60.");
});
