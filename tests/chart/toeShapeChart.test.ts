import { describe, expect, test } from "vitest";
import { toeShapeChart } from "../../src/chart/toeShapeChart.js";
import { renderers, scene } from "./renderers.js";
import { toes, toesTaken } from "./shapeCharts.js";

describe.each(renderers)("drawn by $name", (renderer) => {
  test("one mark a foot, by end and specimen", async () => {
    const { items } = await scene(toeShapeChart(toes, toesTaken), renderer);
    const marks = items.filter(({ type, datum }) => type === "symbol" && datum["name"] !== undefined);
    expect(marks.map(({ datum }) => datum["kind"])).toEqual(["front", "hind", "hind", "specimen"]);
  });
});

test("ranges in words, singular and plural", () => {
  expect(toeShapeChart(toes, toesTaken).reading).toBe(
    "1 front foot: width over length 1.02 to 1.02, toe over greatest width 0.88 to 0.88. 2 hind feet: width over length 0.94 to 0.96, toe over greatest width 0.77 to 0.80. 1 specimen: width over length 1.00 to 1.00, toe over greatest width 0.83 to 0.83.",
  );
});
