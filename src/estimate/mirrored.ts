import type { Point } from "./Point.js";
import type { Points } from "./Points.js";
import { coordinates } from "./shape/coordinates.js";

/**
 * Points as in a mirror: x turned to -x, order kept. Left feet mirrored can be set beside right ones; a landmark stays the landmark
 * it was. The direction of an outline turns round, so mirror first and `resampledOutline` after.
 *
 * Errors (`EstimateError`): `not_a_number`.
 */
export function mirrored(points: Points): Point[] {
  const { x, y } = coordinates(points);
  return Array.from(x, (value, i) => ({ x: 0 - value, y: y[i]! }));
}
