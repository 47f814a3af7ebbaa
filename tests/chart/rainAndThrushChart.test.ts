import { describe, expect, test } from "vitest";
import { rainAndThrushChart } from "../../src/chart/rainAndThrushChart.js";
import { months, rainOptions } from "./charts.js";
import { renderers, scene } from "./renderers.js";

describe.each(renderers)("drawn by $name", (renderer) => {
  test("a point for each share, a line for each interval, a bar for each total; nothing for what is missing", async () => {
    const { items } = await scene(rainAndThrushChart(months, rainOptions), renderer);
    const seen = items.filter((item) => item.opacity !== 0);
    const drawn = (type: string) => seen.filter((item) => item.type === type).map((item) => item.datum["month"]);
    const withShare = ["2024-11", "2024-12", "2025-01", "2025-04", "2025-05"];
    expect(drawn("symbol")).toEqual(withShare);
    expect(drawn("rule")).toEqual(withShare);
    expect(drawn("rect")).toEqual(["2024-11", "2024-12", "2025-01", "2025-02", "2025-05"]);
    expect(items.filter((item) => item.text === "no total").map((item) => item.datum["month"])).toEqual(["2025-04"]);
  });

  test("the month pointed at is lit in both panels; without a pointer, as in a picture, none is", async () => {
    const chart = rainAndThrushChart(months, rainOptions);
    const bands = async (value?: string) => {
      const pointed = value === undefined ? undefined : { selection: "pointedMonth", field: "month", value };
      const { items } = await scene(chart, renderer, pointed);
      // Bands come for every month, measured or not, so that any can be pointed at; bars have no opacity of their own.
      return items.filter((item) => item.type === "rect" && item.opacity !== undefined);
    };
    const lit = async (value?: string) =>
      (await bands(value)).filter((item) => item.opacity! > 0).map((item) => item.datum["month"]);
    expect((await bands()).map((item) => item.datum["month"])).toEqual([...months, ...months].map((row) => row.month));
    expect(await lit()).toEqual([]);
    expect(await lit("2024-12")).toEqual(["2024-12", "2024-12"]);
    expect(await lit("2025-02")).toEqual(["2025-02", "2025-02"]);
  });

  test("counts stand above the months, unless there are too many to be written", async () => {
    const few = await scene(rainAndThrushChart(months, rainOptions), renderer);
    expect(few.items.filter((item) => item.type === "text").map((item) => item.text)).toEqual(
      expect.arrayContaining(["n", "40", "45", "3", "0", "44", "41"]),
    );
    const crowded = rainAndThrushChart(
      months.map((row) => ({ ...row, n: row.n * 100_000_000 })),
      rainOptions,
    );
    expect((await scene(crowded, renderer)).items.filter((item) => item.text === "n")).toEqual([]);
  });
});

test("the two measures never share a panel", () => {
  const { spec } = rainAndThrushChart(months, rainOptions);
  const panels = (spec["vconcat"] as unknown[]).map((panel) => JSON.stringify(panel));
  expect(panels.map((panel) => [panel.includes("estimate"), panel.includes("rainMm")])).toEqual([
    [true, false],
    [false, true],
  ]);
});

test("a month without a row keeps its place on the axis", () => {
  const { spec } = rainAndThrushChart(months, rainOptions);
  expect(JSON.stringify(spec)).toContain(`"domain":["2024-11","2024-12","2025-01","2025-02","2025-03","2025-04","2025-05"]`);
});

test("title and reading name the worst and best month that can be judged, with the count", () => {
  const chart = rainAndThrushChart([{ ...months[2]!, estimate: 0.9 }, ...months.slice(0, 2), ...months.slice(4)], rainOptions);
  expect(chart.title).toBe("Thrush was most frequent in December 2024");
  expect(chart.reading).toBe(
    "Thrush was most frequent in December 2024: 40% (95% interval 27% to 55%, 45 horses), least in May 2025: 7% (95% interval 3% to 19%, 41 horses). Most rain: 160 mm in December 2024.",
  );
});

test("a given title is kept", () => {
  expect(rainAndThrushChart(months, { ...rainOptions, title: "As wet, half as bad" }).title).toBe("As wet, half as bad");
});

test("small groups are greyed with the reason", () => {
  const { table } = rainAndThrushChart(months, { ...rainOptions, tooFewReason: "fewer than 5 horses" });
  expect(table.greyed).toEqual([{ row: 2, reason: "fewer than 5 horses" }]);
});

test("without rows, or without a number in them, words stand instead", () => {
  expect(rainAndThrushChart([], rainOptions).reading).toBe("No month has been recorded yet.");
  const blank = rainAndThrushChart([{ ...months[3]!, rainMm: null }], rainOptions);
  expect(blank.reading).toBe("No month has a share with thrush or a rain total.");
  expect(blank.table.rows).toHaveLength(1);
});

test("a month that is none and a number that is none are refused", () => {
  expect(() => rainAndThrushChart([{ ...months[0]!, month: "2025-13" }], rainOptions)).toThrow(/YYYY-MM.*2025-13/);
  expect(() => rainAndThrushChart([{ ...months[0]!, rainMm: NaN }], rainOptions)).toThrow(RangeError);
});
