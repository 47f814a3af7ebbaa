import { describe, expect, test } from "vitest";
import { survivalChart } from "../../src/chart/survivalChart.js";
import { renderers, scene } from "./renderers.js";

const line = {
  ...{ name: "wet", n: 10, longest: 50 },
  steps: [
    { time: 10, survival: 0.8, lower: 0.4, upper: 0.95 },
    { time: 30, survival: 0.4, lower: 0.1, upper: 0.7 },
  ],
  readings: [{ time: 28, atRisk: 8, estimate: 0.8, lower: 0.4, upper: 0.95 }],
};
const options = {
  ...{ title: "How long shoes stayed on", timeTitle: "Days", shareTitle: "Share still on", unit: "shoes", level: 0.95 },
  intervalNote: "taking shoes as independent",
};

describe.each(renderers)("drawn by $name", (renderer) => {
  test("the line starts at all, steps down at each time and ends where watching ends", async () => {
    const { items } = await scene(survivalChart([line], options), renderer);
    const drawn = items.filter(({ type }) => type === "line").map(({ datum }) => [datum["time"], datum["survival"]]);
    expect(drawn).toEqual([
      [0, 1],
      [10, 0.8],
      [30, 0.4],
      [50, 0.4],
    ]);
  });

  test("two groups carry their names at the ends of their lines", async () => {
    const { items } = await scene(survivalChart([line, { ...line, name: "dry" }], options), renderer);
    expect(items.filter(({ type }) => type === "text").map(({ text }) => text)).toEqual(["wet", "dry"]);
  });
});

test("the reading and the table hold the readings; without steps there is no curve", () => {
  const { reading, table } = survivalChart([line], options);
  expect(reading).toBe("Share still on: wet 80% (95% interval 40% to 95%, 8 still watched) at 28 days.");
  expect(table.rows).toEqual([{ name: "wet", ...line.readings[0] }]);
  expect(survivalChart([{ ...line, steps: [] }], options).reading).toContain("Nothing came to an end");
});
