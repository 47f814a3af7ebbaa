import { describe, expect, test } from "vitest";
import { forestChart } from "../../src/chart/forestChart.js";
import { forestOptions, forestRows } from "./climateCharts.js";
import { renderers, scene } from "./renderers.js";

describe.each(renderers)("drawn by $name", (renderer) => {
  test("a point for each estimate, a line where both limits are finite, n for each row that has one", async () => {
    const { items } = await scene(forestChart(forestRows, forestOptions), renderer);
    const drawn = (type: string) => items.filter((item) => item.type === type).map((item) => item.datum["label"]);
    expect(drawn("symbol")).toEqual(["Crude", "Mixed model", "No upper limit"]);
    const texts = items.filter(({ type, datum }) => type === "text" && datum["label"] !== undefined).map(({ text }) => text);
    expect(texts).toEqual(forestRows.map(({ n }) => (n === null ? "–" : (expect.stringMatching(/^[\d,]+$/) as string))));
    expect(drawn("rule").filter((label) => label !== undefined)).toEqual(["Crude", "Mixed model"]);
  });
});

test("the table keeps what cannot be drawn, and the reading says it", () => {
  const { table, reading } = forestChart(forestRows, forestOptions);
  expect(table.rows[2]!["upper"]).toBe(Infinity);
  expect(reading).toContain("Mixed model 1.12 (0.98 to 1.28)");
  expect(reading).toContain("Not estimated not estimated");
});
