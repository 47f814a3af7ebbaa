import { expect, test } from "vitest";
import { feetOverTimeChart, type FeetOverTimeRow } from "../../src/chart/feetOverTimeChart.js";
import { frozen } from "./charts.js";
import { renderers, scene } from "./renderers.js";

const feet = ["near fore", "off hind"];
const row = (visit: string, foot: string, grade: number | null, more: Partial<FeetOverTimeRow> = {}): FeetOverTimeRow => ({
  ...{ visit, foot, grade, notSeen: false, vet: false },
  ...more,
});
const rows = frozen([
  row("6 Jan 2025", "near fore", 0),
  row("6 Jan 2025", "off hind", 2),
  row("17 Feb 2025", "near fore", null),
  row("17 Feb 2025", "off hind", null, { notSeen: true }),
  row("31 Mar 2025", "near fore", 1),
  row("31 Mar 2025", "off hind", 3, { vet: true }),
]);

test.each(renderers)("one tile a foot and visit, its grade written in, with $name", async (renderer) => {
  const { items, complaints } = await scene(feetOverTimeChart(rows, { feet }), renderer);
  expect(complaints).toEqual([]);
  const texts = items.filter(({ type }) => type === "text").map(({ text }) => text);
  expect([...texts].sort()).toEqual(["0", "1", "2", "3", "×", "–"].sort());
  expect(items.filter(({ type }) => type === "rect")).toHaveLength(6);
});

test("visits keep the order they come in, not that of the alphabet", () => {
  const { spec } = feetOverTimeChart(rows, { feet });
  expect(spec).toMatchObject({ encoding: { x: { sort: ["6 Jan 2025", "17 Feb 2025", "31 Mar 2025"] } } });
});

test("the reading says every tile, the table too", () => {
  const chart = feetOverTimeChart(rows, { feet });
  expect(chart.reading).toBe("Grades by visit, oldest first: near fore 0 – 1; off hind 2 × 3.");
  expect(chart.table.rows).toEqual([
    { visit: "6 Jan 2025", "near fore": "0", "off hind": "2" },
    { visit: "17 Feb 2025", "near fore": "not graded", "off hind": "not looked at" },
    { visit: "31 Mar 2025", "near fore": "1", "off hind": "3 (the vet's)" },
  ]);
});

test("no visit: said in words", () => {
  expect(feetOverTimeChart([], { feet }).reading).toBe("No visit has been recorded.");
});
