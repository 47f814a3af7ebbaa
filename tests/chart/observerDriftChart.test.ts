import { describe, expect, test } from "vitest";
import { observerDriftChart } from "../../src/chart/observerDriftChart.js";
import { drift } from "./climateCharts.js";
import { renderers, scene } from "./renderers.js";

describe.each(renderers)("drawn by $name", (renderer) => {
  test("a point for each quarter with kappa, the count for every quarter", async () => {
    const { items } = await scene(observerDriftChart(drift, { title: "Agreement", level: 0.95 }), renderer);
    expect(items.filter((item) => item.type === "symbol").map((item) => item.datum["quarter"])).toEqual(["2024-Q1"]);
    expect(items.filter((item) => item.type === "text").map((item) => item.text)).toEqual(["40", "3", "n"]);
  });
});
