import { EstimateError } from "../EstimateError.js";
import type { FootLandmarks } from "../FootLandmarks.js";
import { coordinates } from "./coordinates.js";
import { nearestOnRing } from "./nearestOnRing.js";
import type { Ring } from "./Ring.js";

/** A landmark may lie this share of the foot's length off the outline it belongs to. */
const OFF_OUTLINE = 0.1;

/** An outline seen from its own foot. */
export interface FootFrame {
  /** Of each point, from the toe towards the middle between the heels. */
  readonly along: Float64Array;
  /** Of each point, from the axis, positive on the outer (lateral) side. */
  readonly across: Float64Array;
  /** Toe to the middle between the heels. */
  readonly length: number;
}

/**
 * Turns an outline onto the axis of its foot.
 *
 * Errors: `not_a_number`; `out_of_range` when landmarks coincide, when the heels lie on the axis so that inner and outer cannot be
 * told, or when a landmark lies more than a tenth of the foot's length off the outline.
 */
export function footFrame(ring: Ring, landmarks: FootLandmarks): FootFrame {
  const { x, y } = coordinates([landmarks.toe, landmarks.heelMedial, landmarks.heelLateral]);
  const [toeX, toeY] = [x[0]!, y[0]!];
  const [axisX, axisY] = [(x[1]! + x[2]!) / 2 - toeX, (y[1]! + y[2]!) / 2 - toeY];
  const length = Math.hypot(axisX, axisY);
  const lateral = axisX * (y[2]! - y[1]!) - axisY * (x[2]! - x[1]!);
  if (!(Math.abs(lateral) > 1e-9 * length * ring.perimeter)) {
    throw new EstimateError(
      "out_of_range",
      "The landmarks toe, inner heel and outer heel do not make a triangle, so the foot has no axis with two sides.",
      "Give the tip of the toe and the ground end of both heel buttresses.",
    );
  }
  ["toe", "inner heel", "outer heel"].forEach((name, k) => {
    const { distance } = nearestOnRing(ring, x[k]!, y[k]!);
    if (distance <= OFF_OUTLINE * length) return;
    throw new EstimateError(
      "out_of_range",
      `The landmark at the ${name} lies ${Number(distance.toPrecision(3))} off the outline of a foot ${Number(length.toPrecision(3))} long.`,
      "Give landmarks and outline of the same foot, traced in the same frame.",
    );
  });
  const [alongX, alongY] = [axisX / length, axisY / length];
  const sign = Math.sign(lateral);
  const along = new Float64Array(ring.x.length);
  const across = new Float64Array(ring.x.length);
  for (let i = 0; i < along.length; i += 1) {
    const dx = ring.x[i]! - toeX;
    const dy = ring.y[i]! - toeY;
    along[i] = dx * alongX + dy * alongY;
    across[i] = sign * (alongX * dy - alongY * dx);
  }
  return { along, across, length };
}
