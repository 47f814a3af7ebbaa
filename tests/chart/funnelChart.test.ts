import { describe, expect, test } from "vitest";
import { funnelChart } from "../../src/chart/funnelChart.js";
import { funnelCurve, funnelOptions, funnelRows } from "./funnel.js";
import { renderers, scene } from "./renderers.js";

describe.each(renderers)("drawn by $name", (renderer) => {
  test("one point a group at its share, four curves, and one line in the middle", async () => {
    const { items } = await scene(funnelChart(funnelRows, funnelCurve, funnelOptions), renderer);
    const points = items
      .filter(({ type }) => type === "symbol")
      .map(({ datum }) => [datum["group"], datum["n"], datum["estimate"]]);
    expect(points).toEqual(funnelRows.map(({ group, n, estimate }) => [group, n, estimate]));
    expect(items.filter(({ type }) => type === "rule").map(({ datum }) => datum["target"])).toEqual([0.3]);
    expect(items.filter(({ type }) => type === "line")).toHaveLength(4 * funnelCurve.length);
  });
});

test("the title names whoever is outside the outer limits, never a group that is too small", () => {
  expect(funnelChart(funnelRows, funnelCurve, funnelOptions).title).toBe("Outside what chance allows in thrush: Marsh");
  const calm = funnelRows.filter(({ group }) => group !== "Marsh");
  expect(funnelChart(calm, funnelCurve, funnelOptions).title).toBe(
    "No yards stand out from the rest in thrush by more than chance",
  );
});

test("small groups are greyed with the reason; without groups there are words", () => {
  const { table, spec } = funnelChart(funnelRows, funnelCurve, funnelOptions);
  expect(table.greyed).toEqual([{ row: 2, reason: "fewer than 5 horses" }]);
  expect(JSON.stringify(spec)).toContain("Grey, hollow: fewer than 5 horses.");
  expect(funnelChart([], [], funnelOptions).reading).toBe("No yards have a share with thrush.");
});
