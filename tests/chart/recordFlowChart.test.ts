import { describe, expect, test } from "vitest";
import { recordFlowChart } from "../../src/chart/recordFlowChart.js";
import { flow } from "./climateCharts.js";
import { renderers, scene } from "./renderers.js";

test("one row is not several", () => {
  const steps = [{ step: "Read", left: 1, lost: 0, why: "" }];
  expect(recordFlowChart(steps, { title: "Record flow", unit: "rows of feet" }).reading).toBe("Rows of feet: 1 read, 1 used.");
});

describe.each(renderers)("drawn by $name", (renderer) => {
  test("a bar a step, and what was lost in words", async () => {
    const { items } = await scene(recordFlowChart(flow, { title: "Record flow", unit: "feet" }), renderer);
    expect(items.filter((item) => item.type === "rect").map((item) => item.datum["left"])).toEqual([4609, 4100]);
    expect(items.filter((item) => item.type === "text").map((item) => item.text)).toEqual([
      "4609",
      "4100  (−509: not looked at)",
    ]);
  });
});
