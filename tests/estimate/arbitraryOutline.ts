import fc from "fast-check";
import type { Point } from "../../src/estimate/Point.js";

/** Traced outlines: 16 to 80 points round a wavy ring that never crosses itself, anticlockwise, about 120 across. */
export const arbitraryOutline: fc.Arbitrary<Point[]> = fc
  .record({
    n: fc.integer({ min: 16, max: 80 }),
    waves: fc.array(fc.tuple(fc.double({ min: 0, max: 0.1, noNaN: true }), fc.double({ min: 0, max: 6.3, noNaN: true })), {
      minLength: 4,
      maxLength: 4,
    }),
    stretch: fc.double({ min: 1.15, max: 1.6, noNaN: true }),
  })
  .map(({ n, waves, stretch }) =>
    Array.from({ length: n }, (_, i) => {
      const angle = (2 * Math.PI * i) / n;
      const radius = 60 * waves.reduce((sum, [height, phase], k) => sum + height * Math.cos((k + 2) * angle + phase), 1);
      return { x: radius * Math.cos(angle) * stretch, y: radius * Math.sin(angle) };
    }),
  );

/** A move that keeps shape: scale, turn, shift. */
export const arbitraryMove = fc.record({
  scale: fc.double({ min: 0.05, max: 20, noNaN: true }),
  angle: fc.double({ min: -3.1, max: 3.1, noNaN: true }),
  dx: fc.double({ min: -1000, max: 1000, noNaN: true }),
  dy: fc.double({ min: -1000, max: 1000, noNaN: true }),
});

export interface Move {
  readonly scale: number;
  readonly angle: number;
  readonly dx: number;
  readonly dy: number;
}

/** The points scaled, turned and shifted. */
export function movedBy(points: readonly Point[], { scale, angle, dx, dy }: Move): Point[] {
  const [c, s] = [scale * Math.cos(angle), scale * Math.sin(angle)];
  return points.map(({ x, y }) => ({ x: c * x - s * y + dx, y: s * x + c * y + dy }));
}

/** The points from another start. */
export function startingAt(points: readonly Point[], start: number): Point[] {
  const first = start % points.length;
  return [...points.slice(first), ...points.slice(0, first)];
}
