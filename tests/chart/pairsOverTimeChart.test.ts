import { describe, expect, test } from "vitest";
import { pairsOverTimeChart } from "../../src/chart/pairsOverTimeChart.js";
import { renderers, scene } from "./renderers.js";
import { pairs, pairsOptions } from "./shapeCharts.js";

describe.each(renderers)("drawn by $name", (renderer) => {
  test("a panel for each pair with all its readings, and the same scale in all", async () => {
    const { items, compiled } = await scene(pairsOverTimeChart(pairs, pairsOptions), renderer);
    const marks = items.filter(({ type, datum }) => type === "symbol" && datum["visitDate"] !== undefined);
    expect(marks.map(({ datum }) => datum["differenceDeg"])).toEqual([1, 4, 7, -2]);
    const text = JSON.stringify(compiled);
    expect(text.match(/"domain":\[-8,8\]/g)?.length).toBe(2);
  });
});

test("first and last reading of each pair in words", () => {
  expect(pairsOverTimeChart(pairs, pairsOptions).reading).toBe(
    "Bess: 1.0 degrees on 2025-01-06, 7.0 on 2025-05-05. Captain: −2.0 degrees on 2025-02-03, −2.0 on 2025-02-03.",
  );
});
