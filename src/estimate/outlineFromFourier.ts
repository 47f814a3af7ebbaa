import type { EllipticFourier } from "./ellipticFourier.js";
import { EstimateError } from "./EstimateError.js";
import { requireCount } from "./numeric/requireCount.js";
import type { Point } from "./Point.js";

/**
 * Points of the outline that elliptic Fourier descriptors stand for, for drawing: one full turn in equal steps, not closed by a
 * repeated point.
 *
 * Method: the sum of the first `harmonics` ellipses (all when left out) about the means; `points` of them, 200 when left out. With few
 * harmonics corners are rounded off.
 *
 * Errors (`EstimateError`): `not_a_count`; `out_of_range` for fewer than three points or more harmonics than there are.
 *
 * Source: Kuhl FP, Giardina CR (1982) Comput Graph Image Process 18:236-258.
 */
export function outlineFromFourier(
  fourier: Pick<EllipticFourier, "harmonics" | "a0" | "c0">,
  options: { readonly points?: number; readonly harmonics?: number } = {},
): Point[] {
  const points = requireCount("number of points", options.points ?? 200);
  const count = requireCount("number of harmonics", options.harmonics ?? fourier.harmonics.length);
  if (points < 3 || count > fourier.harmonics.length) {
    throw new EstimateError(
      "out_of_range",
      `${points} points and ${count} harmonics were asked for, and there are ${fourier.harmonics.length} harmonics.`,
      "Ask for three points or more and no more harmonics than there are.",
    );
  }
  const used = fourier.harmonics.slice(0, count);
  return Array.from({ length: points }, (_, i) => {
    let [x, y] = [fourier.a0, fourier.c0];
    for (const { n, a, b, c, d } of used) {
      const angle = (2 * Math.PI * n * i) / points;
      x += a * Math.cos(angle) + b * Math.sin(angle);
      y += c * Math.cos(angle) + d * Math.sin(angle);
    }
    return { x, y };
  });
}
