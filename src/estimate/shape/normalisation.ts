import { EstimateError } from "../EstimateError.js";
import type { FootLandmarks } from "../FootLandmarks.js";
import { coordinates } from "./coordinates.js";
import type { FourierSums } from "./fourierSums.js";
import { nearestOnRing } from "./nearestOnRing.js";
import type { Ring } from "./Ring.js";

/** Minor over major axis of the first ellipse above which its direction is not to be trusted. */
const ROUND = 0.95;

/** Coefficients without place, turn, size and start, and what was taken out. */
export interface Normalisation {
  readonly table: Float64Array;
  readonly phase: number;
  readonly angle: number;
  readonly size: number;
  readonly note: string | null;
}

/**
 * Takes turn, size and start out of Fourier coefficients, by their first ellipse or by landmarks; see `ellipticFourier`. An outline
 * traced clockwise is first taken backwards, which flips the sign of b and d.
 *
 * Errors: `out_of_range` for landmarks that coincide; `no_variation` when the first ellipse has no size.
 */
export function normalisation(ring: Ring, { table }: FourierSums, by: "ellipse" | FootLandmarks): Normalisation {
  const backwards = ring.signedArea < 0;
  const forwards = backwards ? table.map((value, k) => (k % 2 === 1 ? -value : value)) : table;
  const { phase, angle, size, note } = by === "ellipse" ? firstEllipse(forwards) : byLandmarks(ring, by, backwards);
  const turned = new Float64Array(table.length);
  const [cosine, sine] = [Math.cos(angle) / size, Math.sin(angle) / size];
  for (let k = 0; k < table.length; k += 4) {
    const shift = (k / 4 + 1) * phase;
    const [c, s] = [Math.cos(shift), Math.sin(shift)];
    const [a, b] = [forwards[k]! * c + forwards[k + 1]! * s, forwards[k + 1]! * c - forwards[k]! * s];
    const [e, f] = [forwards[k + 2]! * c + forwards[k + 3]! * s, forwards[k + 3]! * c - forwards[k + 2]! * s];
    turned[k] = a * cosine + e * sine;
    turned[k + 1] = b * cosine + f * sine;
    turned[k + 2] = e * cosine - a * sine;
    turned[k + 3] = f * cosine - b * sine;
  }
  return { table: turned, phase, angle, size, note };
}

function firstEllipse(table: Float64Array): Omit<Normalisation, "table"> {
  const [a, b, c, d] = [table[0]!, table[1]!, table[2]!, table[3]!];
  const phase = Math.atan2(2 * (a * b + c * d), a * a + c * c - b * b - d * d) / 2;
  const [x, y] = [a * Math.cos(phase) + b * Math.sin(phase), c * Math.cos(phase) + d * Math.sin(phase)];
  const size = Math.hypot(x, y);
  if (size === 0) {
    throw new EstimateError("no_variation", "The first ellipse of the outline has no size.", "Normalise by landmarks.");
  }
  const roundness = Math.abs(a * d - b * c) / (size * size);
  const note =
    roundness > ROUND
      ? `The first ellipse is nearly a circle (${roundness.toFixed(2)}): its axis hangs on small differences, so normalise by landmarks.`
      : null;
  return { phase, angle: Math.atan2(y, x), size, note };
}

function byLandmarks(ring: Ring, landmarks: FootLandmarks, backwards: boolean): Omit<Normalisation, "table"> {
  const { x, y } = coordinates([landmarks.toe, landmarks.heelMedial, landmarks.heelLateral]);
  const [dx, dy] = [x[0]! - (x[1]! + x[2]!) / 2, y[0]! - (y[1]! + y[2]!) / 2];
  const size = Math.hypot(dx, dy);
  if (!(size > 1e-9 * ring.perimeter)) {
    throw new EstimateError(
      "out_of_range",
      "The toe lies between the heels, so the foot has no axis.",
      "Give the tip of the toe and the ground end of both heel buttresses.",
    );
  }
  const { edge, share } = nearestOnRing(ring, x[0]!, y[0]!);
  let travelled = share * ring.step[edge]!;
  for (let i = 0; i < edge; i += 1) travelled += ring.step[i]!;
  const phase = (2 * Math.PI * travelled) / ring.perimeter;
  return { phase: backwards ? -phase : phase, angle: Math.atan2(dy, dx), size, note: null };
}
