import { Ajv } from "ajv";
import { describe, expect, test } from "vitest";
import { cellText } from "../../src/chart/cellText.js";
import { charts, frozen } from "./charts.js";
import { renderers, scene } from "./renderers.js";

// The schemas are those published with each version of Vega-Lite.
const validators = renderers.map(({ name, schema }) => {
  const ajv = new Ajv({ strict: false, validateFormats: false });
  return { name, validate: ajv.compile(schema) };
});

const computing = [
  "aggregate",
  "bin",
  "density",
  "errorband",
  "errorbar",
  "extent",
  "impute",
  "joinaggregate",
  "loess",
  "quantile",
  "regression",
  "window",
  "boxplot",
];

function keysAndMarks(value: unknown, found = new Set<string>()): Set<string> {
  if (typeof value !== "object" || value === null) return found;
  for (const [key, inner] of Object.entries(value)) {
    // Data rows are the caller's words.
    if (key === "values") continue;
    found.add(key);
    if ((key === "type" || key === "mark") && typeof inner === "string") found.add(inner);
    keysAndMarks(inner, found);
  }
  return found;
}

describe.each(charts)("%s", (_, chart) => {
  test.each(validators)("is valid by the schema of $name", ({ validate }) => {
    validate(chart.spec);
    expect(validate.errors?.slice(0, 3) ?? []).toEqual([]);
  });

  test.each(renderers)("is compiled by $name without changing it and drawn without a warning", async (renderer) => {
    const { complaints } = await scene(frozen(chart), renderer);
    expect(complaints).toEqual([]);
  });

  test.each(renderers)("has a title on every axis that has labels, in $name", async (renderer) => {
    const axes: { labels?: boolean; grid?: boolean; title?: unknown; domain?: boolean }[] = [];
    const collect = (value: unknown): void => {
      if (typeof value !== "object" || value === null) return;
      for (const [key, inner] of Object.entries(value)) {
        if (key === "axes" && Array.isArray(inner)) axes.push(...(inner as typeof axes));
        else if (key !== "data") collect(inner);
      }
    };
    collect((await scene(chart, renderer)).compiled);
    const untitled = axes.filter((axis) => axis.labels !== false && (axis.title === undefined || axis.title === null));
    expect(untitled).toEqual([]);
  });

  test("computes nothing in the drawing", () => {
    const found = keysAndMarks(chart.spec);
    expect(computing.filter((word) => found.has(word))).toEqual([]);
  });

  test("says itself in words and holds its own data", () => {
    expect(chart.spec["$schema"]).toBe("https://vega.github.io/schema/vega-lite/v5.json");
    expect(chart.spec["description"]).toBe(`${chart.title}. ${chart.reading}`);
    expect(chart.reading).toMatch(/\.$/);
    const text = JSON.stringify(chart.spec);
    expect(text).not.toContain('"url"');
    expect(text.length).toBeLessThan(60_000);
    expect(JSON.parse(text)).toEqual(chart.spec);
  });

  test("tells its numbers to the pointer, wherever it draws some", () => {
    // A chart with nothing to draw is one text.
    const nothing = (chart.spec["mark"] as { type?: string } | undefined)?.type === "text";
    expect(JSON.stringify(chart.spec).includes('"tooltip"')).toBe(!nothing);
  });

  test("has a table whose every cell can be printed", () => {
    const names = chart.table.columns.map((column) => column.name);
    expect(chart.table.caption).not.toBe("");
    for (const row of chart.table.rows) {
      expect(Object.keys(row)).toEqual(names);
      for (const column of chart.table.columns) expect(cellText(row[column.name] ?? null, column)).not.toMatch(/NaN|undefined/);
    }
  });
});
