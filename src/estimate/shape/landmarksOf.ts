import type { Point } from "../Point.js";

/** x and y in turn, as points. */
export function landmarksOf(values: Float64Array): Point[] {
  return Array.from({ length: values.length / 2 }, (_, i) => ({ x: values[2 * i]!, y: values[2 * i + 1]! }));
}
