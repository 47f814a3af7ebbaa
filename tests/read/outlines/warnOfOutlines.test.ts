import { expect, test } from "vitest";
import { warnOfOutlines } from "../../../src/read/outlines/warnOfOutlines.js";
import { issueLog } from "../../../src/read/report/issueLog.js";
import type { OutlinePoint } from "../../../src/study/OutlinePoint.js";
import { tracing } from "../../derive/tracing.js";

const issues = (outlines: readonly OutlinePoint[]) => {
  const log = issueLog();
  warnOfOutlines(outlines, log);
  return log.issues(["outlines.csv"]);
};
const wall = (row: OutlinePoint) => row.ring === "wall" && /\d/.test(row.point);
const number = ({ point }: OutlinePoint) => Number(point);

test("a sound outline says nothing, whichever way round it was traced, closed by a repeated point or not", () => {
  const rows = tracing();
  expect(issues(rows)).toEqual([]);
  expect(issues(rows.map((row) => (wall(row) ? { ...row, point: String(49 - number(row)) } : row)))).toEqual([]);
  const first = rows.find((row) => wall(row) && row.point === "1")!;
  expect(issues([...rows, { ...first, point: "49" }])).toEqual([]);
});

test("a crossing is told in words, with the line of the tracing, and its rows are kept", () => {
  const swap: Readonly<Record<string, string>> = { "10": "12", "12": "10" };
  const mixed = tracing().map((row) => (wall(row) ? { ...row, point: swap[row.point] ?? row.point } : row));
  expect(issues(mixed)).toEqual([
    {
      ...{ file: "outlines.csv", line: 2, row: null, column: null, value: null },
      ...{ code: "outline_crossing", severity: "warning" },
      message: "outlines.csv, line 2: the outline of A, RF, of 2025-01-06: the wall crosses itself after the points 9 and 12.",
      hint: "Number the points in the order in which they follow each other around the foot. Until then no figure uses it.",
    },
  ]);
});

test("an outline that ends at the heels is closed, one that ends elsewhere is open", () => {
  // Points run clockwise from the toe; the heels lie at the places 21 and 29 of 48.
  const fromHeel = tracing().flatMap((row) => {
    if (!wall(row)) return [row];
    const place = (number(row) + 20) % 48;
    return place < 7 ? [] : [{ ...row, point: String(place) }];
  });
  expect(issues(fromHeel).map(({ code }) => code)).toEqual([]);
  const threeQuarters = tracing().filter((row) => !wall(row) || number(row) <= 36);
  expect(issues(threeQuarters)).toMatchObject([
    { code: "outline_open", message: expect.stringContaining("and not at the heels") as string },
  ]);
});

test("a wall that comes back to a place, inches for millimetres", () => {
  const at = (point: string) => tracing().find((row) => wall(row) && row.point === point)!;
  const back = tracing().map((row) => (wall(row) && row.point === "9" ? { ...row, xMm: at("7").xMm, yMm: at("7").yMm } : row));
  expect(issues(back)).toMatchObject([
    { code: "outline_repeated_place", message: expect.stringContaining("at point 9 to the place of point 7") as string },
  ]);
  const inches = tracing().map((row) => ({ ...row, xMm: row.xMm / 25.4, yMm: row.yMm / 25.4 }));
  expect(issues(inches)).toMatchObject([
    { code: "outline_unlikely_size", hint: expect.stringContaining("inches by 25.4") as string },
  ]);
});
