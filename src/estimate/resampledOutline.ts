import { EstimateError } from "./EstimateError.js";
import type { OutlineOptions } from "./OutlineOptions.js";
import { requireCount } from "./numeric/requireCount.js";
import type { Point } from "./Point.js";
import type { Points } from "./Points.js";
import { coordinates } from "./shape/coordinates.js";
import { nearestOnRing } from "./shape/nearestOnRing.js";
import { ringOf } from "./shape/ringOf.js";

/**
 * `n` points at equal distances along an outline, anticlockwise (with y upwards), the first where the outline comes nearest to
 * `start`, such as the toe. Points of two feet so resampled correspond, which `procrustes` needs; mirror left feet before.
 *
 * Method: places on the edges of the polygon at equal steps of its length. Without `start` the first point of the outline.
 *
 * Errors (`EstimateError`): those of `outlineMoments`; `not_a_count`; `out_of_range` for fewer than three points.
 *
 * Source: common practice for semi-landmarks on a closed outline, no source.
 */
export function resampledOutline(
  points: Points,
  n: number,
  options: OutlineOptions & { readonly start?: Points[number] } = {},
): Point[] {
  requireCount("number of points", n);
  if (n < 3) throw new EstimateError("out_of_range", `${n} points were asked for.`, "Ask for three or more.");
  const ring = ringOf(points, options);
  const { x, y, step, perimeter } = ring;
  const forward = ring.signedArea > 0;
  const start = options.start === undefined ? null : coordinates([options.start]);
  let { edge, share } = start === null ? { edge: 0, share: 0 } : nearestOnRing(ring, start.x[0]!, start.y[0]!);
  const found: Point[] = [];
  for (let k = 0; k < n; k += 1) {
    const next = edge + 1 === x.length ? 0 : edge + 1;
    found.push({ x: x[edge]! + share * (x[next]! - x[edge]!), y: y[edge]! + share * (y[next]! - y[edge]!) });
    let left = perimeter / n;
    for (let turns = 0; turns <= x.length; turns += 1) {
      const ahead = (forward ? 1 - share : share) * step[edge]!;
      if (ahead >= left) break;
      left -= ahead;
      edge = forward ? (edge + 1) % x.length : (edge + x.length - 1) % x.length;
      share = forward ? 0 : 1;
    }
    share += ((forward ? 1 : -1) * left) / step[edge]!;
  }
  return found;
}
