import { describe, expect, test } from "vitest";
import { growthTimelineChart } from "../../src/chart/growthTimelineChart.js";
import { renderers, scene } from "./renderers.js";
import { timeline, timelineOptions } from "./shapeCharts.js";

describe.each(renderers)("drawn by $name", (renderer) => {
  test("a panel for each foot with a mark, every sighting in it, an end only where there is one", async () => {
    const { items } = await scene(growthTimelineChart(timeline, timelineOptions), renderer);
    const marks = items.filter(({ type, datum }) => type === "symbol" && datum["below"] !== undefined);
    expect(marks.map(({ datum }) => datum["below"])).toEqual([10, 22, 8]);
    const bars = items.filter(({ type, datum }) => type === "line" && datum["interval"] !== undefined);
    expect(new Set(bars.map(({ datum }) => datum["interval"]))).toEqual(new Set(["0 began", "0 out"]));
  });
});

test("in words, with the days", () => {
  expect(growthTimelineChart(timeline, timelineOptions).reading).toBe(
    "Near fore, ring: 22 mm below the hairline on 2025-04-07, began between 2024-12-19 and 2025-01-26, out at the toe between 2025-10-15 and 2026-01-28. Off hind, abscess track: 8 mm below the hairline on 2025-03-03, began between 2025-01-23 and 2025-02-05.",
  );
});
