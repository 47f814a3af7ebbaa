import { describe, expect, test } from "vitest";
import { shapeByFootChart } from "../../src/chart/shapeByFootChart.js";
import { renderers, scene } from "./renderers.js";
import { byFoot, byFootBands, byFootOptions } from "./shapeCharts.js";

describe.each(renderers)("drawn by $name", (renderer) => {
  test("each mark stands in the column of its foot, none on another, and each end has a band", async () => {
    const { items } = await scene(shapeByFootChart(byFoot, byFootBands, byFootOptions), renderer);
    const marks = items
      .filter(({ type, datum }) => type === "symbol" && datum["horseId"] !== undefined)
      .map(({ datum }) => datum);
    const column: Readonly<Record<string, number>> = { "near fore": 0, "off fore": 1, "near hind": 2, "off hind": 3 };
    expect(marks).toHaveLength(byFoot.length);
    for (const { words, place } of marks) expect(Math.abs(Number(place) - column[String(words)]!)).toBeLessThan(0.31);
    expect(new Set(marks.map(({ place, value }) => `${String(place)} ${String(value)}`)).size).toBe(byFoot.length);
    expect(items.filter(({ type }) => type === "rect")).toHaveLength(2);
  });
});

test("bands and counts in words", () => {
  expect(shapeByFootChart(byFoot, byFootBands, byFootOptions).reading).toBe(
    "Width / length: front feet from 0.96 to 1.08, median 1.01; hind feet from 0.88 to 1.00, median 0.95; 6 feet.",
  );
  expect(shapeByFootChart(byFoot.slice(0, 1), [], byFootOptions).reading).toBe("Width / length of 1 foot.");
});
