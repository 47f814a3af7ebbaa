import { expect, test } from "vitest";
import { tracedOutlines } from "../../src/derive/tracedOutlines.js";
import { meanOutlines } from "../../src/estimate/meanOutlines.js";
import type { Point } from "../../src/estimate/Point.js";
import type { OutlinePoint } from "../../src/study/OutlinePoint.js";
import { tracing, type TracingOptions } from "../derive/tracing.js";

const means = (outlines: readonly OutlinePoint[], points = 120) =>
  meanOutlines(tracedOutlines({ outlines }, { mirrorLeft: true }), { points });
const foot = (options: TracingOptions) => tracing({ points: 400, ...options });
const width = (ring: readonly Point[]) => Math.max(...ring.map(({ x }) => x)) - Math.min(...ring.map(({ x }) => x));

test("one shape in every place, size and turn is its own mean, without a spread, the toe at 0, 1", () => {
  const rows = [
    ...foot({ horseId: "A" }),
    ...foot({ horseId: "B", at: [80, -40], turnedDeg: 70 }),
    ...foot({ horseId: "C", halfWidthMm: 72, halfHeightMm: 78, turnedDeg: -20 }),
    ...foot({ horseId: "D", foot: "LF", outerLeft: true, at: [5, 5] }),
    ...foot({ horseId: "A", foot: "RH" }),
  ];
  const [fore, hind] = means(rows);
  expect([fore!.end, fore!.horses, fore!.outlines, hind!.horses]).toEqual(["fore", 4, 4, 1]);
  expect(fore!.mean[0]!.x).toBeCloseTo(0, 6);
  expect(fore!.mean[0]!.y).toBeCloseTo(1, 6);
  // The oval of 60 by 65 is 120 wide and 65 (1 + sin 60) long; the polygon of 120 places is a little narrower.
  expect(width(fore!.mean)).toBeCloseTo(120 / (65 * (1 + Math.sqrt(3) / 2)), 3);
  fore!.mean.forEach(({ x, y }, place) => {
    expect(Math.hypot(fore!.outer[place]!.x - x, fore!.outer[place]!.y - y)).toBeLessThan(1e-6);
  });
});

test("the ends keep their difference, each horse counts once, and the band lies outside and inside", () => {
  const wide = { halfWidthMm: 66, halfHeightMm: 65 };
  const narrow = { halfWidthMm: 56, halfHeightMm: 65 };
  const rows = [
    ...foot({ horseId: "A", ...wide }),
    ...foot({ horseId: "A", ...wide, visitDate: "2025-02-03" }),
    ...foot({ horseId: "A", ...wide, visitDate: "2025-03-03" }),
    ...foot({ horseId: "B", halfWidthMm: 64, halfHeightMm: 65 }),
    ...foot({ horseId: "A", foot: "RH", ...narrow }),
    ...foot({ horseId: "B", foot: "RH", ...narrow }),
  ];
  const [fore, hind] = means(rows);
  expect([fore!.horses, fore!.outlines]).toEqual([2, 4]);
  // 65 against 56 of one length are 1.16 to 1; at one size the wide ones are drawn shorter and narrower.
  expect(width(fore!.mean) / width(hind!.mean)).toBeGreaterThan(1.06);
  const area = (ring: readonly Point[]) =>
    ring.reduce((sum, { x, y }, k) => sum + x * ring[(k + 1) % ring.length]!.y - ring[(k + 1) % ring.length]!.x * y, 0) / 2;
  expect(area(fore!.outer)).toBeGreaterThan(area(fore!.mean));
  expect(area(fore!.inner)).toBeLessThan(area(fore!.mean));
  // Three tracings of A weigh no more than one.
  const [once] = means(rows.filter(({ visitDate }) => visitDate === "2025-01-06"));
  expect(width(once!.mean)).toBeCloseTo(width(fore!.mean), 4);
  expect(width(once!.outer)).toBeCloseTo(width(fore!.outer), 4);
});

test("specimens and unusable outlines make no mean", () => {
  const rows = [
    ...foot({ horseId: "A" }),
    ...foot({ horseId: "B" }),
    ...foot({ horseId: "specimen", foot: "H" }),
    ...foot({ horseId: "C", foot: "RH" }).filter(({ point }) => point !== "toe"),
  ];
  expect(means(rows).map(({ end, outlines }) => [end, outlines])).toEqual([["fore", 2]]);
});
