import type { OutlineOptions } from "./OutlineOptions.js";
import type { Point } from "./Point.js";
import type { Points } from "./Points.js";
import { convexHull } from "./shape/convexHull.js";
import type { Ring } from "./shape/Ring.js";
import { ringOf } from "./shape/ringOf.js";

/** Size and form of an outline. Lengths are in the unit of the points, areas in its square, second moments in its fourth power. */
export interface OutlineMoments {
  readonly area: number;
  readonly perimeter: number;
  /** Centre of the area, not the mean of the points. */
  readonly centroid: Point;
  /** Second moments of the area about the centroid: the integrals of y², of x² and of xy. */
  readonly ixx: number;
  readonly iyy: number;
  readonly ixy: number;
  /** Larger and smaller second moment about the principal axes. */
  readonly principalMoments: readonly [number, number];
  /** Direction of the long axis, degrees anticlockwise from x, above -90 to 90; null when no direction is longer than another. */
  readonly longAxisDeg: number | null;
  /** 4π area / perimeter²: 1 for a circle, less for anything else. */
  readonly circularity: number;
  /** Root of larger over smaller principal moment: the ratio of the axes of the ellipse with the same moments, 1 or more. */
  readonly aspect: number;
  /** Area over that of the convex hull, 1 or less. */
  readonly convexity: number;
  /** Perimeter of the convex hull over that of the outline, 1 or less. */
  readonly perimeterConvexity: number;
  /** Diameter of a circle of the same area. */
  readonly equivalentDiameter: number;
  /** How the points run, with y upwards. No other figure depends on it. */
  readonly orientation: "anticlockwise" | "clockwise";
  /** Different points used. */
  readonly n: number;
  /** Points left out because they repeat the one before them. */
  readonly repeated: number;
  /** Says that an open outline was closed; null when it was not. */
  readonly note: string | null;
}

/**
 * Area, perimeter, centre, second moments and form of a traced outline.
 *
 * Method: Green's theorem on the polygon through the points; second moments are taken about the centroid. Start point, direction and
 * repeated points (a closing point that repeats the first among them) make no difference. A perimeter, and circularity with it,
 * depends on how finely and how steadily a hand traces: compare only outlines traced in one way.
 *
 * Errors (`EstimateError`): `not_a_number`; `too_few` for fewer than three different points; `no_variation` when they lie on one
 * line; `self_crossing`, naming the edges; `open_outline` (see `OutlineOptions`); `out_of_range` for a size that is not the expected one.
 *
 * Source: Steger C (1996) On the calculation of arbitrary moments of polygons, for the moments; circularity, aspect and convexity are
 * common practice, no source.
 */
export function outlineMoments(points: Points, options: OutlineOptions = {}): OutlineMoments {
  const ring = ringOf(points, options);
  const { perimeter, signedArea, centroid, repeated, note } = ring;
  const area = Math.abs(signedArea);
  const { ixx, iyy, ixy } = secondMoments(ring);
  const middle = (ixx + iyy) / 2;
  const reach = Math.hypot((iyy - ixx) / 2, ixy);
  // The smaller one from the determinant: a difference loses the digits of a long thin outline along x or y.
  const larger = middle + reach;
  const smaller = (ixx * iyy - ixy * ixy) / larger;
  const hull = hullOf(ring);
  return {
    area,
    perimeter,
    centroid,
    ixx,
    iyy,
    ixy,
    principalMoments: [larger, smaller],
    longAxisDeg: reach > 1e-12 * larger ? (Math.atan2(2 * ixy, iyy - ixx) * 90) / Math.PI : null,
    circularity: (4 * Math.PI * area) / perimeter ** 2,
    aspect: Math.max(1, Math.sqrt(larger / smaller)),
    convexity: Math.min(1, area / hull.area),
    perimeterConvexity: Math.min(1, hull.perimeter / perimeter),
    equivalentDiameter: 2 * Math.sqrt(area / Math.PI),
    orientation: signedArea > 0 ? "anticlockwise" : "clockwise",
    n: ring.x.length,
    repeated,
    note,
  };
}

function secondMoments({ x, y, centroid, signedArea }: Ring): { ixx: number; iyy: number; ixy: number } {
  const n = x.length;
  let [ixx, iyy, ixy] = [0, 0, 0];
  let [ax, ay] = [x[n - 1]! - centroid.x, y[n - 1]! - centroid.y];
  for (let i = 0; i < n; i += 1) {
    const bx = x[i]! - centroid.x;
    const by = y[i]! - centroid.y;
    const cross = ax * by - bx * ay;
    ixx += (ay * ay + ay * by + by * by) * cross;
    iyy += (ax * ax + ax * bx + bx * bx) * cross;
    ixy += (ax * by + 2 * ax * ay + 2 * bx * by + bx * ay) * cross;
    ax = bx;
    ay = by;
  }
  const sign = Math.sign(signedArea);
  return { ixx: (sign * ixx) / 12, iyy: (sign * iyy) / 12, ixy: (sign * ixy) / 24 };
}

function hullOf({ x, y, centroid }: Ring): { area: number; perimeter: number } {
  const corners = convexHull(x, y);
  let [twice, perimeter] = [0, 0];
  let before = corners[corners.length - 1]!;
  for (const corner of corners) {
    const ax = x[before]! - centroid.x;
    const ay = y[before]! - centroid.y;
    const bx = x[corner]! - centroid.x;
    const by = y[corner]! - centroid.y;
    twice += ax * by - bx * ay;
    perimeter += Math.sqrt((bx - ax) * (bx - ax) + (by - ay) * (by - ay));
    before = corner;
  }
  return { area: Math.abs(twice) / 2, perimeter };
}
