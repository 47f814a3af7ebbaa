import { EstimateError } from "./EstimateError.js";
import type { Point } from "./Point.js";
import type { Points } from "./Points.js";
import { alignment } from "./shape/alignment.js";
import { configured } from "./shape/configured.js";

/** How one set of landmarks fits on another: fitted = scale × rotation × landmark + translation. */
export interface ProcrustesFit {
  /** Sum of squares that is left when both have size 1 and the second may be scaled: 0 for equal shapes, 1 at most. */
  readonly disparity: number;
  /** Root of `disparity`. */
  readonly fullDistance: number;
  /** Distance when both keep size 1. */
  readonly partialDistance: number;
  /** Angle between the shapes on the sphere of size 1, radians. */
  readonly riemannianDistance: number;
  /** Sum of squares that is left when the second set is fitted to the first as it stands, in its squared unit. */
  readonly ss: number;
  readonly scale: number;
  /** Rows of the matrix that turns a landmark of the second set; a mirror image where `reflected`. */
  readonly rotation: readonly [readonly [number, number], readonly [number, number]];
  readonly translation: Point;
  readonly reflected: boolean;
  /** Root of the sum of squared distances from the mean, of the first and the second set. */
  readonly centroidSizes: readonly [number, number];
  /** The second set laid on the first. */
  readonly fitted: readonly Point[];
  readonly landmarks: number;
}

/**
 * Ordinary Procrustes fit of landmarks `b` to landmarks `a`: place, size and turn are taken out, what is left is shape. Landmarks must
 * correspond in order; make outlines correspond with `resampledOutline`.
 *
 * Method: least squares, in the plane by the complex inner product of the centred sets. A mirror image is used only with
 * `reflection: true` and when it fits better; without, a left foot and a right foot stay two shapes.
 *
 * Errors (`EstimateError`): `length_mismatch`; `not_a_number`; `too_few` for fewer than two landmarks; `no_variation` when all
 * landmarks of a set lie in one place.
 *
 * Source: Dryden IL, Mardia KV (1998) Statistical Shape Analysis, chapters 4 and 5; Gower JC (1975) Psychometrika 40:33-51.
 */
export function procrustes(a: Points, b: Points, options: { readonly reflection?: boolean } = {}): ProcrustesFit {
  if (a.length !== b.length) {
    throw new EstimateError(
      "length_mismatch",
      `The first set has ${a.length} landmarks, the second ${b.length}.`,
      "Give the same landmarks in the same order; outlines can be resampled to the same number of points.",
    );
  }
  const fixed = configured(a, "first set");
  const moved = configured(b, "second set");
  const straight = alignment(fixed.unit, moved.unit);
  const mirror = options.reflection === true ? alignment(fixed.unit, moved.unit, true) : straight;
  // Sets on one line fit equally well both ways; a mirror must be better, not equal.
  const reflected = mirror.likeness > straight.likeness + 1e-14;
  const { cosine, sine, likeness } = reflected ? mirror : straight;
  const sign = reflected ? -1 : 1;
  const scale = (likeness * fixed.size) / moved.size;
  const fitted: Point[] = [];
  let disparity = 0;
  for (let k = 0; k < fixed.unit.length; k += 2) {
    const [x, y] = [likeness * moved.unit[k]!, likeness * sign * moved.unit[k + 1]!];
    const [turnedX, turnedY] = [cosine * x - sine * y, sine * x + cosine * y];
    disparity += (fixed.unit[k]! - turnedX) ** 2 + (fixed.unit[k + 1]! - turnedY) ** 2;
    fitted.push({ x: fixed.meanX + fixed.size * turnedX, y: fixed.meanY + fixed.size * turnedY });
  }
  const fullDistance = Math.sqrt(disparity);
  const angle = Math.atan2(fullDistance, likeness);
  const rotation = [[cosine, 0 - sign * sine] as const, [sine, sign * cosine] as const] as const;
  return {
    disparity,
    fullDistance,
    partialDistance: 2 * Math.sin(angle / 2),
    riemannianDistance: angle,
    ss: disparity * fixed.size ** 2,
    scale,
    rotation,
    translation: {
      x: fixed.meanX - scale * (rotation[0][0] * moved.meanX + rotation[0][1] * moved.meanY),
      y: fixed.meanY - scale * (rotation[1][0] * moved.meanX + rotation[1][1] * moved.meanY),
    },
    reflected,
    centroidSizes: [fixed.size, moved.size],
    fitted,
    landmarks: a.length,
  };
}
