import type { Point } from "./Point.js";

/** Places in the plane, in order, as `{ x, y }` or as `[x, y]`. Any other fields of an object are not looked at. */
export type Points = readonly (Point | readonly [number, number])[];
