import { describe, expect, test } from "vitest";
import { yardMonthsChart } from "../../src/chart/yardMonthsChart.js";
import { monthsOptions, yardMonths } from "./climateCharts.js";
import { renderers, scene } from "./renderers.js";

describe.each(renderers)("drawn by $name", (renderer) => {
  test("points only for months with feet seen; no bar without rain", async () => {
    const { items } = await scene(yardMonthsChart(yardMonths, monthsOptions), renderer);
    const months = (type: string) =>
      items.filter((item) => item.type === type && item.datum["yardId"] === "Top").map((item) => item.datum["month"]);
    expect(months("symbol")).toEqual(["2025-01", "2025-04"]);
    expect(months("rect")).toEqual(["2025-01", "2025-02"]);
  });
});

test.each(renderers)("yards may be called as they like, drawn by $name", async (renderer) => {
  const named = ["constructor", "toString", "if"].map((yardId) => ({ ...yardMonths[0]!, yardId }));
  const { items } = await scene(yardMonthsChart(named, monthsOptions), renderer);
  expect(items.filter(({ type }) => type === "symbol").map(({ datum }) => datum["yardId"])).toEqual([
    "constructor",
    "toString",
    "if",
  ]);
});

test("one yard and one month are counted as one", () => {
  expect(yardMonthsChart([yardMonths[0]!], monthsOptions).reading).toBe("1 yard, 1 month; the numbers stand in the table.");
});

test("yards beyond twelve stand in the table only, and this is said", () => {
  const many = Array.from({ length: 14 }, (_, place) => ({ ...yardMonths[0]!, yardId: `Y${place}` }));
  const { spec, table } = yardMonthsChart(many, monthsOptions);
  expect(table.rows).toHaveLength(14);
  expect(JSON.stringify(spec["title"])).toContain("2 more yards");
});

test("months that follow each other are joined, no line crosses a month without feet; all yards on one scale", () => {
  const rows = ["2025-01", "2025-02", "2025-03", "2025-04", "2025-06"].map((month, place) => ({
    ...{ yardId: "Top", month, share: place === 2 ? null : 0.1 * place, n: 8, rainMm: 10 * place },
  }));
  const { spec } = yardMonthsChart([...rows, { ...rows[0]!, yardId: "Brook" }], monthsOptions);
  const text = JSON.stringify(spec);
  const lines = [...text.matchAll(/"data":\{"values":(\[[^\]]*\])\},"mark":\{"type":"line"/g)].map(([, values]) =>
    (JSON.parse(values!) as { month: string }[]).map(({ month }) => month),
  );
  expect(lines).toEqual([["2025-01", "2025-02"]]);
  expect(new Set([...text.matchAll(/"domain":\[0,([\d.]+)\]/g)].map(([, most]) => Number(most)))).toEqual(new Set([0.4, 40]));
});
