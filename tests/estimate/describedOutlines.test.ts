import { expect, test } from "vitest";
import { tracedOutlines } from "../../src/derive/tracedOutlines.js";
import { describedOutlines } from "../../src/estimate/describedOutlines.js";
import type { OutlinePoint } from "../../src/study/OutlinePoint.js";
import { tracing } from "../derive/tracing.js";

const described = (outlines: readonly OutlinePoint[]) => describedOutlines(tracedOutlines({ outlines }));
const chord = (n: number) => (n / (2 * Math.PI)) * Math.sin((2 * Math.PI) / n);

test("an oval foot, by the geometry of the ellipse", () => {
  const [a, b, n] = [60, 65, 1200];
  const [row] = described(tracing({ halfWidthMm: a, halfHeightMm: b, points: n, horseId: "A", foot: "RF" })).rows;
  // Heels at 60 degrees below: the length is b (1 + sin 60), a quarter of it from the toe lies at the height b - length / 4.
  const length = b * (1 + Math.sqrt(3) / 2);
  const near = Math.sqrt(1 - ((b - length / 4) / b) ** 2);
  expect(row).toMatchObject({ footId: "A RF", end: "fore", side: "right", stage: "before_trim" });
  expect(row!.areaCm2).toBeCloseTo((Math.PI * a * b * chord(n)) / 100, 8);
  expect(row!.shapeIndex).toBeCloseTo((2 * a) / length, 5);
  expect(row!.toeTaper).toBeCloseTo(near, 4);
  expect(row!.widestFromToe).toBeCloseTo(b / length, 4);
  expect(row!.aspect).toBeCloseTo(b / a, 5);
  expect(row!.convexity).toBeCloseTo(1, 10);
  expect(row!.areaAsymmetry).toBeCloseTo(0, 10);
  // The small frog is an ellipse of 20 by 35, of 12 points.
  expect(row!.frogToSole).toBeCloseTo((20 * 35 * chord(12)) / (a * b * chord(n)), 8);
});

test("what is not usable or is refused is left out with the reason", () => {
  const swap: Readonly<Record<string, string>> = { "10": "12", "12": "10" };
  const mixed = tracing({ horseId: "B" }).map((row) =>
    row.ring === "wall" ? { ...row, point: swap[row.point] ?? row.point } : row,
  );
  const frogOut = tracing({ horseId: "C" }).map((row) => (row.ring === "frog" ? { ...row, xMm: row.xMm + 500 } : row));
  const { rows, leftOut } = described([...tracing(), ...mixed, ...frogOut]);
  expect(rows.map(({ horseId }) => horseId)).toEqual(["A"]);
  expect(leftOut).toEqual([
    { horseId: "B", visitDate: "2025-01-06", foot: "RF", reason: "The wall crosses itself after the points 9 and 12." },
    { horseId: "C", visitDate: "2025-01-06", foot: "RF", reason: "The centre of the frog lies outside the wall." },
  ]);
});

test("inner and outer are not told of a specimen, nor of an outline that lies the other way round", () => {
  const right = ["A", "B", "C", "D"].flatMap((horseId) => tracing({ horseId }));
  const odd = tracing({ horseId: "E", foot: "RF", outerLeft: true });
  const specimen = tracing({ horseId: "specimen", foot: "F" });
  const told = described([...right, ...odd, ...specimen]).rows.filter(({ areaAsymmetry }) => areaAsymmetry !== null);
  expect(told.map(({ horseId }) => horseId)).toEqual(["A", "B", "C", "D"]);
});

test("a foot without a frog has no ratio", () => {
  expect(described(tracing({ frogPoints: 0 })).rows[0]).toMatchObject({ frogToSole: null });
});
