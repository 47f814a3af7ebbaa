import { describe, expect, test } from "vitest";
import { intervalKeepingChart } from "../../src/chart/intervalKeepingChart.js";
import { keepingOptions, yards } from "./charts.js";
import { renderers, scene } from "./renderers.js";

describe.each(renderers)("drawn by $name", (renderer) => {
  test("each yard's bar holds all its intervals, in the order kept, early, late", async () => {
    const { items } = await scene(intervalKeepingChart(yards, keepingOptions), renderer);
    const bars = items.filter((item) => item.type === "rect").map((item) => item.datum);
    const ends = bars.map((datum) => [datum["yardId"], datum["state"], datum["count_start"], datum["count_end"]]);
    // 40, 3 and 12 of 55 intervals.
    const first = ends.filter(([yard]) => yard === "Brook Farm");
    expect(first.map(([, state]) => state)).toEqual(["kept", "early", "late"]);
    expect(first.map(([, , start]) => start as number)).toEqual([0, expect.closeTo(40 / 55, 12), expect.closeTo(43 / 55, 12)]);
    expect(first.map(([, , , end]) => end as number)).toEqual([expect.closeTo(40 / 55, 12), expect.closeTo(43 / 55, 12), 1]);
  });

  test("counts are written where there is room, and the total beside", async () => {
    const { items } = await scene(intervalKeepingChart(yards.slice(0, 1), keepingOptions), renderer);
    const texts = items.filter((item) => item.type === "text").map((item) => item.text);
    expect(texts).toEqual(["40", "", "12", "55", "n"]);
  });
});

// Names that are words of the language in which a chart is written, or of the one that runs it; of these the oldest Vega cannot stack any.
test.each([
  { renderer: renderers[0]!, names: ["Zennor", "if", "Abbot"] },
  { renderer: renderers[1]!, names: ["toString", "Zennor", "constructor", "if", "__proto__", "Abbot"] },
])("yards of any name keep the order of the rows, drawn by $renderer.name", async ({ renderer, names }) => {
  const rows = names.map((yardId) => ({ yardId, early: 1, kept: 1, late: 1 }));
  const { items } = await scene(intervalKeepingChart(rows, keepingOptions), renderer);
  const heights = new Map(items.filter(({ type }) => type === "rect").map(({ datum, y }) => [datum["yardId"], y]));
  expect([...heights].sort(([, a], [, b]) => a! - b!).map(([name]) => name)).toEqual(names);
});

test("the title names the yard that was late most often, by share and not by number", () => {
  const { title, reading } = intervalKeepingChart(
    [
      { yardId: "Large", early: 0, kept: 90, late: 30 },
      { yardId: "Small", early: 1, kept: 9, late: 10 },
      { yardId: "Tiny", early: 0, kept: 0, late: 2, tooFew: true },
    ],
    keepingOptions,
  );
  expect(title).toBe("Late most often: Small, 10 of 20 intervals");
  expect(reading).toBe(
    "Intervals by yard: Large 90 kept, 0 early, 30 late; Small 9 kept, 1 early, 10 late; Tiny 0 kept, 0 early, 2 late.",
  );
});

test("small groups are greyed in drawing and table", () => {
  const { spec, table } = intervalKeepingChart(yards, keepingOptions);
  const { values } = spec["data"] as { readonly values: readonly { readonly yardId: string; readonly shade: string }[] };
  expect(values.filter(({ yardId }) => yardId === "Top").map(({ shade }) => shade)).toEqual([
    "kept, too few",
    "early, too few",
    "late, too few",
  ]);
  expect(table.greyed).toEqual([{ row: 2, reason: "too few to judge" }]);
});

test("a yard without intervals stands in the table only; without any, words stand instead", () => {
  const nothing = { yardId: "New", early: 0, kept: 0, late: 0 };
  const chart = intervalKeepingChart([...yards, nothing], keepingOptions);
  expect(JSON.stringify(chart.spec)).not.toContain('"New"');
  expect(chart.table.rows).toHaveLength(4);
  expect(intervalKeepingChart([nothing], keepingOptions).reading).toBe(
    "No interval between two routine visits can be set against a plan.",
  );
});
