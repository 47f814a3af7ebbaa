import type { PlanePoint } from "../study/PlanePoint.js";
import { ringArea } from "./ringArea.js";
import type { TracedOutline } from "./TracedOutline.js";

/** What a caliper would read off a traced outline. */
export interface OutlineMeasures {
  readonly hoofWidthMm: number;
  readonly hoofLengthMm: number;
  readonly frogWidthMm: number | null;
  readonly frogLengthMm: number | null;
  /** Hoof width over hoof length. */
  readonly shapeIndex: number;
  /** Frog width over frog length. */
  readonly frogIndex: number | null;
  /** Length of the closed ring of the wall. */
  readonly circumferenceMm: number;
  /** Area within the ring of the wall. */
  readonly areaCm2: number;
}

/**
 * Width, length, frog, circumference and area of a traced outline; null when the outline is not usable.
 *
 * Method: along and across the line from the middle of the heels to the toe. Hoof length is that line; hoof width, frog width and frog
 * length are the extent of the ring, which a shaky hand makes a little larger. Circumference and area are those of the polygon of the points
 * (shoelace formula), closed from heel to heel.
 *
 * Missing: frog measures are null when there is no usable frog.
 *
 * Source: definitions as in `shapeDefinitions`; the rest is geometry.
 */
export function outlineMeasures(outline: TracedOutline): OutlineMeasures | null {
  if (!outline.usable || outline.landmarks === null) return null;
  const { toe, heelMedial, heelLateral } = outline.landmarks;
  const middle = { x: (heelMedial.x + heelLateral.x) / 2, y: (heelMedial.y + heelLateral.y) / 2 };
  const hoofLengthMm = distance(middle, toe);
  const ahead = { x: (toe.x - middle.x) / hoofLengthMm, y: (toe.y - middle.y) / hoofLengthMm };
  const across = { x: ahead.y, y: -ahead.x };
  const hoofWidthMm = extent(outline.wall, across);
  const frogWidthMm = outline.frog.length === 0 ? null : extent(outline.frog, across);
  const frogLengthMm = outline.frog.length === 0 ? null : extent(outline.frog, ahead);
  return {
    ...{ hoofWidthMm, hoofLengthMm, frogWidthMm, frogLengthMm },
    shapeIndex: hoofWidthMm / hoofLengthMm,
    frogIndex: frogWidthMm === null || frogLengthMm === null || frogLengthMm === 0 ? null : frogWidthMm / frogLengthMm,
    circumferenceMm: outline.wall.reduce(
      (sum, point, place) => sum + distance(point, outline.wall[(place + 1) % outline.wall.length]!),
      0,
    ),
    areaCm2: Math.abs(ringArea(outline.wall)) / 100,
  };
}

function extent(ring: readonly PlanePoint[], along: PlanePoint): number {
  const places = ring.map(({ x, y }) => x * along.x + y * along.y);
  return Math.max(...places) - Math.min(...places);
}

function distance(a: PlanePoint, b: PlanePoint): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}
