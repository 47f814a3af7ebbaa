import { EstimateError } from "../EstimateError.js";
import type { Point } from "../Point.js";
import type { Points } from "../Points.js";

/**
 * Points as two columns of numbers.
 *
 * Errors: `not_a_number`, with the place of the point.
 */
export function coordinates(points: Points): { readonly x: Float64Array; readonly y: Float64Array } {
  // A cell of a notebook is not checked strictly, nor is plain JavaScript.
  const given: unknown = points;
  if (!Array.isArray(given)) {
    throw new EstimateError("not_a_number", "The points are no list.", "Give a list of points, each { x, y } or [x, y].");
  }
  const n = points.length;
  const x = new Float64Array(n);
  const y = new Float64Array(n);
  for (let i = 0; i < n; i += 1) {
    const point = points[i]!;
    const pair = isPair(point);
    const px = pair ? point[0] : (point as Partial<Point> | null)?.x;
    const py = pair ? point[1] : (point as Partial<Point> | null)?.y;
    if (!isNumber(px) || !isNumber(py)) throw notANumber(px, py, i + 1);
    x[i] = px;
    y[i] = py;
  }
  return { x, y };
}

function isPair(point: Point | readonly [number, number]): point is readonly [number, number] {
  return Array.isArray(point);
}

function isNumber(value: unknown): value is number {
  return Number.isFinite(value);
}

function notANumber(x: unknown, y: unknown, place: number): EstimateError {
  return new EstimateError(
    "not_a_number",
    `Found (${String(x)}, ${String(y)}) as point ${place}; two finite numbers are needed.`,
    "Leave out points that were not recorded; a missing coordinate is never NaN.",
  );
}
