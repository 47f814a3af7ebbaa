import { EstimateError } from "../EstimateError.js";
import { edgeMeetings } from "./edgeMeetings.js";

/** Points that lie off one line by less than this share of their reach lie on it. */
const FLAT = 1e-12;

/**
 * Checks that an outline encloses one area and that no edge meets another but its neighbours at their joint. An outline that turns
 * one way, once, round its own centre is simple; only others are searched edge by edge. `place` says where each point was given.
 *
 * Errors: `no_variation` when all points lie on one line; `self_crossing`, naming up to three pairs of edges.
 */
export function requireSimple(
  x: Float64Array,
  y: Float64Array,
  signedArea: number,
  centroid: { readonly x: number; readonly y: number },
  place: Int32Array,
): void {
  const n = x.length;
  if (turnsOnceRound(x, y, signedArea, centroid)) return;
  if (onOneLine(x, y)) {
    throw new EstimateError(
      "no_variation",
      "All points of the outline lie on one line, so it has no area.",
      "Give the points of the whole outline in order.",
    );
  }
  const meetings = edgeMeetings(x, y);
  if (meetings.length === 0) return;
  const edge = (i: number) => `${place[i]! + 1}-${place[(i + 1) % n]! + 1}`;
  const shown = meetings.slice(0, 3).map(([i, j]) => `the edge of points ${edge(i)} meets that of points ${edge(j)}`);
  const more = meetings.length > 3 ? `, and ${meetings.length - 3} more` : "";
  throw new EstimateError(
    "self_crossing",
    `The outline crosses or touches itself: ${shown.join(", ")}${more}.`,
    "Give the points in the order in which they follow each other round the outline, and one outline at a time.",
  );
}

function turnsOnceRound(
  x: Float64Array,
  y: Float64Array,
  signedArea: number,
  centre: { readonly x: number; readonly y: number },
): boolean {
  if (signedArea === 0) return false;
  const n = x.length;
  const least = 1e-12 * Math.abs(signedArea);
  const sign = signedArea > 0 ? 1 : -1;
  let rounds = 0;
  let [ax, ay] = [x[n - 1]! - centre.x, y[n - 1]! - centre.y];
  for (let i = 0; i < n; i += 1) {
    const bx = x[i]! - centre.x;
    const by = y[i]! - centre.y;
    const cross = ax * by - bx * ay;
    if (!(cross * sign > least)) return false;
    // Edges over the ray to the right of the centre: each one is one more turn.
    if (ay > 0 !== by > 0 && (by > ay ? cross > 0 : cross < 0)) rounds += 1;
    ax = bx;
    ay = by;
  }
  return rounds === 1;
}

function onOneLine(x: Float64Array, y: Float64Array): boolean {
  const n = x.length;
  let [far, most] = [0, 0];
  for (let i = 1; i < n; i += 1) {
    const away = (x[i]! - x[0]!) ** 2 + (y[i]! - y[0]!) ** 2;
    if (away > most) [far, most] = [i, away];
  }
  const [ux, uy] = [x[far]! - x[0]!, y[far]! - y[0]!];
  for (let i = 1; i < n; i += 1) {
    if (Math.abs(ux * (y[i]! - y[0]!) - uy * (x[i]! - x[0]!)) > FLAT * most) return false;
  }
  return true;
}
