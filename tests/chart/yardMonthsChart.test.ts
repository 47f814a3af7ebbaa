import { describe, expect, test } from "vitest";
import { yardMonthsChart } from "../../src/chart/yardMonthsChart.js";
import { monthsOptions, yardMonths } from "./climateCharts.js";
import { renderers, scene } from "./renderers.js";

describe.each(renderers)("drawn by $name", (renderer) => {
  test("points only for months with feet seen; no bar without rain", async () => {
    const { items } = await scene(yardMonthsChart(yardMonths, monthsOptions), renderer);
    expect(items.filter((item) => item.type === "symbol").map((item) => item.datum["share"])).toEqual([0, 0.4, 0, 0.4]);
  });
});

test("yards beyond twelve stand in the table only, and this is said", () => {
  const many = Array.from({ length: 14 }, (_, place) => ({ ...yardMonths[0]!, yardId: `Y${place}` }));
  const { spec, table } = yardMonthsChart(many, monthsOptions);
  expect(table.rows).toHaveLength(14);
  expect(JSON.stringify(spec["title"])).toContain("2 more yards");
});
