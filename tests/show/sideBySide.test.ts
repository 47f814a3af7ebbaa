import { expect, test } from "vitest";
import { bundlesOf } from "../../src/show/notebook/bundlesOf.js";
import { sideBySide } from "../../src/show/sideBySide.js";
import { toText } from "../../src/show/toText.js";
import { rainAndThrushChart } from "../../src/chart/rainAndThrushChart.js";
import { months, rainOptions } from "../chart/charts.js";
import { renderers, scene } from "../chart/renderers.js";
import { answer, chart, notEnough, table } from "./shown.js";

test("words and tables stand in columns, the charts in one live drawing below", async () => {
  const [words, drawing, ...rest] = await bundlesOf(sideBySide(answer, { ...answer, question: "And the other yard?" }));
  expect(rest).toEqual([]);
  const html = words?.data["text/html"] as string;
  expect(html.match(/<div style="flex:1/g)).toHaveLength(2);
  expect(html.indexOf("And the other yard?")).toBeGreaterThan(html.indexOf(answer.question));
  const spec = drawing?.data["application/vnd.vegalite.v5+json"] as Record<string, unknown> & {
    hconcat: Record<string, unknown>[];
  };
  expect(spec.hconcat).toHaveLength(2 * answer.charts.length);
  expect(spec.hconcat[0]).not.toHaveProperty("config");
  expect(spec).toMatchObject({ $schema: chart.spec["$schema"], config: chart.spec["config"] });
  expect(drawing?.data["image/png"]).toEqual(expect.any(String));
});

test.each(renderers)("two charts are drawn by $name without a complaint", async (renderer) => {
  const [drawing] = await bundlesOf(sideBySide(chart, chart));
  const spec = drawing?.data["application/vnd.vegalite.v5+json"] as Record<string, unknown>;
  const [one, two] = [await scene(chart, renderer), await scene({ ...chart, spec }, renderer)];
  expect(two.complaints).toEqual([]);
  expect(two.items).toHaveLength(2 * one.items.length);
});

test.each(renderers)("the months of two charts are lit together by $name", async (renderer) => {
  const one = rainAndThrushChart(months, rainOptions);
  const other = rainAndThrushChart(months.slice(0, 2), rainOptions);
  const [drawing] = await bundlesOf(sideBySide(one, other));
  const spec = drawing?.data["application/vnd.vegalite.v5+json"] as Record<string, unknown>;
  const pointed = { selection: "pointedMonth", field: "month", value: "2024-12" };
  const { complaints, items } = await scene({ ...one, spec }, renderer, pointed);
  expect(complaints).toEqual([]);
  const lit = items.filter((item) => item.type === "rect" && item.opacity !== undefined && item.opacity > 0);
  expect(lit.map((item) => item.datum["month"])).toEqual(["2024-12", "2024-12", "2024-12", "2024-12"]);
});

test("one chart is itself; tables alone give no drawing; text gives one after the other", async () => {
  const [alone] = await bundlesOf(sideBySide(chart));
  expect(alone?.data["application/vnd.vegalite.v5+json"]).toEqual(chart.spec);
  expect(await bundlesOf(sideBySide(table, table))).toHaveLength(1);
  expect(toText(sideBySide(notEnough, table))).toBe(`${toText(notEnough)}\n${toText(table)}`);
});
