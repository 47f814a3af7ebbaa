import { describe, expect, test } from "vitest";
import { prevalenceByBandChart } from "../../src/chart/prevalenceByBandChart.js";
import { bandOptions, bands } from "./charts.js";
import { renderers, scene } from "./renderers.js";

describe.each(renderers)("drawn by $name", (renderer) => {
  test("a point and a line for each band with a share, a count for each band", async () => {
    const { items } = await scene(prevalenceByBandChart(bands, bandOptions), renderer);
    const drawn = (type: string) => items.filter((item) => item.type === type).map((item) => item.datum["band"]);
    expect(drawn("symbol")).toEqual(["0 to 9", "10 to 49", "50 and more"]);
    expect(drawn("rule")).toEqual(["0 to 9", "10 to 49", "50 and more"]);
    expect(items.filter((item) => item.type === "text").map((item) => item.text)).toEqual(["300", "400", "4", "0", "n"]);
  });

  test.each([
    [null, null],
    [0.1, null],
    [null, 0.3],
  ])("an estimate without both limits is a point alone: %s, %s", async (lower, upper) => {
    const row = { band: "0 to 9", estimate: 0.2, lower, upper, cases: 2, n: 10 };
    const { items } = await scene(prevalenceByBandChart([row], bandOptions), renderer);
    expect(items.filter((item) => item.type === "rule")).toEqual([]);
    expect(items.filter((item) => item.type === "symbol")).toHaveLength(1);
  });
});

test("bands keep the order of the rows", () => {
  const { spec } = prevalenceByBandChart(bands, bandOptions);
  expect(JSON.stringify(spec)).toContain(`"domain":["0 to 9","10 to 49","50 and more","not known"]`);
});

test("title and reading come from the bands that can be judged; the level is the one given", () => {
  const { title, reading, table } = prevalenceByBandChart(bands, bandOptions);
  expect(title).toBe("Thrush was most frequent at 10 to 49: rain in the 14 days before the visit (mm)");
  expect(reading).toContain("0 to 9: 7% (90% interval 4% to 10%, 300 feet seen); 10 to 49: 23%");
  expect(table.columns.map((column) => column.title)).toContain("90% interval, from");
  expect(table.greyed).toEqual([{ row: 2, reason: "too few to judge" }]);
});

test("without a share, words stand instead", () => {
  expect(prevalenceByBandChart(bands.slice(3), bandOptions).reading).toBe("No band has a share with thrush.");
});

test("an infinite limit is refused", () => {
  expect(() => prevalenceByBandChart([{ ...bands[0]!, upper: Infinity }], bandOptions)).toThrow(/upper is Infinity/);
});

test("names that would run into each other are written aslant, short ones level", () => {
  const angle = (names: readonly string[]) => {
    const rows = names.map((band) => ({ band, estimate: 0.2, lower: 0.1, upper: 0.3, cases: 2, n: 10 }));
    return /"labelAngle":(-?\d+)/.exec(JSON.stringify(prevalenceByBandChart(rows, bandOptions).spec))?.[1];
  };
  const ten = (letters: number) => Array.from({ length: 10 }, (_, index) => `${index}`.padEnd(letters, "x"));
  expect(angle(ten(6))).toBe("0");
  expect(angle(ten(9))).toBe("-40");
  expect(angle(ten(9).slice(0, 2))).toBe("0");
});
