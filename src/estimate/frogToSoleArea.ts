import { EstimateError } from "./EstimateError.js";
import type { OutlineOptions } from "./OutlineOptions.js";
import type { Points } from "./Points.js";
import type { Ring } from "./shape/Ring.js";
import { ringOf } from "./shape/ringOf.js";

/** Area of the frog beside that of the ground surface, in the squared unit of the points. */
export interface FrogToSoleArea {
  /** Frog area over the area within the bearing border of the wall. */
  readonly ratio: number;
  readonly frogArea: number;
  /** Area within the bearing border of the wall, frog included. */
  readonly soleArea: number;
  /** What a reader must know: points of the frog outside the wall, outlines that were closed. Null when nothing. */
  readonly note: string | null;
}

/**
 * Frog area over sole area, from the outlines of the wall and of the frog of one foot on one occasion.
 *
 * Method: areas by Green's theorem. The sole area is all that lies within the bearing border of the wall, the frog included.
 *
 * Errors (`EstimateError`): those of `outlineMoments` for either outline, saying which; `out_of_range` when the frog is not the smaller
 * outline or its centre lies outside the wall. Expected sizes are held against the wall alone.
 *
 * Source: common practice, no source.
 */
export function frogToSoleArea(wall: Points, frog: Points, options: OutlineOptions = {}): FrogToSoleArea {
  const outer = named("wall", () => ringOf(wall, options));
  const inner = named("frog", () => ringOf(frog, forFrog(options)));
  const [soleArea, frogArea] = [Math.abs(outer.signedArea), Math.abs(inner.signedArea)];
  if (frogArea >= soleArea) {
    throw new EstimateError(
      "out_of_range",
      "The frog is not smaller than the ground surface.",
      "Give the wall first, then the frog.",
    );
  }
  if (!holds(outer, inner.centroid.x, inner.centroid.y)) {
    throw new EstimateError(
      "out_of_range",
      "The centre of the frog lies outside the wall.",
      "Give wall and frog of the same foot, traced in the same frame.",
    );
  }
  const n = inner.x.length;
  let outside = 0;
  for (let i = 0; i < n; i += 1) if (!holds(outer, inner.x[i]!, inner.y[i]!)) outside += 1;
  const notes = [
    outside === 0 ? null : `${outside} of the ${n} points of the frog lie outside the wall.`,
    outer.note === null ? null : `Wall: ${outer.note}`,
    inner.note === null ? null : `Frog: ${inner.note}`,
  ].filter((note) => note !== null);
  return { ratio: frogArea / soleArea, frogArea, soleArea, note: notes.length === 0 ? null : notes.join(" ") };
}

function named(what: string, ring: () => Ring): Ring {
  try {
    return ring();
  } catch (fault) {
    if (!(fault instanceof EstimateError)) throw fault;
    throw new EstimateError(fault.code, fault.message.replace(/\.$/, ` (${what}).`), fault.hint);
  }
}

/** Whether a point lies within an outline: an upright line from it meets an odd number of edges. */
function holds({ x, y }: Ring, px: number, py: number): boolean {
  const n = x.length;
  let inside = false;
  for (let i = 0, j = n - 1; i < n; j = i, i += 1) {
    if (x[i]! > px === x[j]! > px) continue;
    if (py < y[i]! + ((px - x[i]!) / (x[j]! - x[i]!)) * (y[j]! - y[i]!)) inside = !inside;
  }
  return inside;
}

/** Expected sizes are of the wall: the frog is held against none. */
function forFrog({ open, gapSteps }: OutlineOptions): OutlineOptions {
  return { ...(open === undefined ? {} : { open }), ...(gapSteps === undefined ? {} : { gapSteps }) };
}
