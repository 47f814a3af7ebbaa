import { Resvg } from "@resvg/resvg-js";
import { describe, expect, test } from "vitest";
import type { Chart } from "../../src/chart/Chart.js";
import { intervalKeepingChart } from "../../src/chart/intervalKeepingChart.js";
import { shippedFont } from "../../src/show/image/shippedFont.js";
import { toSvg } from "../../src/show/toSvg.js";
import { charts, frozen, keepingOptions, yards } from "../chart/charts.js";

const font = shippedFont();
const keeping = intervalKeepingChart(yards, keepingOptions);

describe.each(charts)("%s", (_, chart) => {
  test("is an image with a name and a description, and nothing in it is cut off", async () => {
    const svg = await toSvg(frozen(chart), { id: "c7" });
    expect(svg).toMatch(/^<svg [^>]*role="img" aria-labelledby="c7-title c7-reading"><title id="c7-title">/);
    expect(svg).not.toMatch(/NaN|undefined|role="graphics/);
    const bare = await toSvg({ ...chart, spec: { ...chart.spec, background: null } });
    const drawing = new Resvg(bare, {
      font: { loadSystemFonts: false, fontFiles: [font.regular, font.semiBold], sansSerifFamily: font.family },
    });
    const box = drawing.getBBox();
    expect(box).toBeDefined();
    expect(box!.x).toBeGreaterThanOrEqual(0);
    expect(box!.y).toBeGreaterThanOrEqual(0);
    expect(box!.x + box!.width).toBeLessThanOrEqual(drawing.width);
    expect(box!.y + box!.height).toBeLessThanOrEqual(drawing.height);
    // Nor is half of the picture empty paper, as it is when letters are taken to be wider than they are.
    expect(box!.width).toBeGreaterThan(0.8 * drawing.width - 200);
  });
});

test("words of the reader are text, never markup", async () => {
  const nasty = { ...yards[0]!, yardId: `<script>alert("1")</script> & 'x' id="y" onload="z"` };
  const svg = await toSvg(intervalKeepingChart([nasty], { ...keepingOptions, title: `"><script>x</script>` }));
  expect(svg).not.toContain("<script");
  expect(svg).toContain("&lt;script&gt;");
  expect(svg).not.toMatch(/<[^>]* onload=/);
});

test("ids begin with the name given, so that two drawings fit on one page", async () => {
  const ids = async (id: string) => [...(await toSvg(keeping, { id })).matchAll(/ id="([^"]+)"/g)].map((match) => match[1]);
  const both = [...(await ids("one")), ...(await ids("two"))];
  expect(new Set(both).size).toBe(both.length);
});

test("the same chart gives the same drawing", async () => {
  expect(await toSvg(keeping)).toBe(await toSvg(keeping));
});

const broken = (spec: object): Chart => ({ ...keeping, title: "Broken", spec: { ...keeping.spec, ...spec } });

test("a warning of the compiler is an error that names the chart", async () => {
  const chart = broken({
    layer: undefined,
    height: 100,
    mark: "bar",
    encoding: { x: { field: "count" }, nonsense: { field: "yardId" } },
  });
  await expect(toSvg(chart)).rejects.toThrow(/The chart "Broken" cannot be drawn cleanly: .*nonsense/);
});

test("nothing is fetched, neither from the network nor from the disk", async () => {
  await expect(toSvg(broken({ data: { url: "https://example.org/rows.json" } }))).rejects.toThrow(/fetches nothing/);
  await expect(toSvg(broken({ data: { url: "package.json" } }))).rejects.toThrow(/fetches nothing/);
});
