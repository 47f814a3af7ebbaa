import { EstimateError } from "../EstimateError.js";
import { requireWithin } from "../numeric/requireWithin.js";
import type { OutlineOptions } from "../OutlineOptions.js";
import type { Points } from "../Points.js";
import { areaCentroid } from "./areaCentroid.js";
import { coordinates } from "./coordinates.js";
import { requireExpectedSize } from "./requireExpectedSize.js";
import { requireSimple } from "./requireSimple.js";
import type { Ring } from "./Ring.js";

/** Points nearer to each other than this, relative to the size of the outline, are one point. */
const SAME_PLACE = 1e-12;

/** With fewer points an outline is a drawing of corners, whose steps say nothing of a gap. */
const FEWEST_TRACED = 12;

/**
 * Checks an outline and makes it ready for computing. Points that repeat the one before them, a repeated closing point among them,
 * are left out; whoever calls sees no difference.
 *
 * Errors: `not_a_number`; `too_few` for fewer than three places; `open_outline`; `no_variation` when all points lie on one line;
 * `self_crossing`, naming the edges; `out_of_range` for a size outside the expected one or options that make no sense.
 */
export function ringOf(points: Points, options: OutlineOptions): Ring {
  const given = coordinates(points);
  const kept = distinctPlaces(given.x, given.y);
  const n = kept.place.length;
  if (n < 3) {
    throw new EstimateError(
      "too_few",
      `The outline has ${n} different points; it needs three or more.`,
      "Give the points of the whole outline in order.",
    );
  }
  const x = picked(given.x, kept.place);
  const y = picked(given.y, kept.place);
  const step = new Float64Array(n);
  let perimeter = 0;
  for (let i = 0, next = 1; i < n; i += 1, next = i + 1 === n ? 0 : i + 1) {
    const dx = x[next]! - x[i]!;
    const dy = y[next]! - y[i]!;
    perimeter += step[i] = Math.sqrt(dx * dx + dy * dy);
  }
  const note = kept.closed ? null : closingNote(step, options);
  const { signedArea, centroid } = areaCentroid(x, y);
  requireSimple(x, y, signedArea, centroid, kept.place);
  if (options.expectedSizeMm !== undefined) requireExpectedSize(Math.abs(signedArea), options.expectedSizeMm);
  return { x, y, step, perimeter, signedArea, centroid, repeated: points.length - n, note };
}

/** Where the points stand that do not repeat the one before them, and whether the last of the given points repeats the first. */
function distinctPlaces(x: Float64Array, y: Float64Array): { readonly place: Int32Array; readonly closed: boolean } {
  const same = SAME_PLACE * extent(x, y);
  const place = new Int32Array(x.length);
  let n = 0;
  let last = -1;
  for (let i = 0; i < x.length; i += 1) {
    if (last !== -1 && Math.abs(x[i]! - x[last]!) <= same && Math.abs(y[i]! - y[last]!) <= same) continue;
    place[n++] = last = i;
  }
  const all = n;
  while (n > 1 && Math.abs(x[place[n - 1]!]! - x[0]!) <= same && Math.abs(y[place[n - 1]!]! - y[0]!) <= same) n -= 1;
  return { place: place.subarray(0, n), closed: n < all };
}

function picked(values: Float64Array, place: Int32Array): Float64Array {
  return place.length === values.length ? values : Float64Array.from(place, (i) => values[i]!);
}

function extent(x: Float64Array, y: Float64Array): number {
  let [left, right, low, high] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let i = 0; i < x.length; i += 1) {
    if (x[i]! < left) left = x[i]!;
    if (x[i]! > right) right = x[i]!;
    if (y[i]! < low) low = y[i]!;
    if (y[i]! > high) high = y[i]!;
  }
  return Math.max(right - left, high - low);
}

/** Says that the outline was open; null when it was not. The last step is the gap. */
function closingNote(step: Float64Array, { open = "refuse", gapSteps = 5 }: OutlineOptions): string | null {
  requireWithin("gap in steps", gapSteps, 1, Infinity);
  const n = step.length;
  const gap = step[n - 1]!;
  if (n < FEWEST_TRACED) return null;
  for (let i = 0; i < n - 1; i += 1) if (step[i]! >= gap) return null;
  const sorted = step.slice(0, n - 1).sort();
  const middle = (sorted[(n - 1) >> 1]! + sorted[(n - 2) >> 1]!) / 2;
  if (gap <= gapSteps * middle) return null;
  const words = `a gap of ${short(gap)} between its last and first point, ${short(gap / middle)} times its median step`;
  if (open === "close") return `The outline was open, with ${words}; a straight line was put across.`;
  throw new EstimateError(
    "open_outline",
    `The outline is open, with ${words}.`,
    'Trace it to the end; or, when a straight line is what belongs there, repeat the first point at the end or ask for { open: "close" }.',
  );
}

function short(value: number): string {
  return String(Number(value.toPrecision(3)));
}
