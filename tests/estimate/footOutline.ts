import type { FootLandmarks } from "../../src/estimate/FootLandmarks.js";
import type { Point } from "../../src/estimate/Point.js";

/** The ground surface of an invented foot. */
export interface FootPlan {
  readonly length: number;
  /** Half of the greatest width, on the inner side. */
  readonly halfWidth: number;
  /** Exponent of the curve of the toe: 2 is an ellipse, less is more pointed. */
  readonly roundness: number;
  /** Where the foot is widest, as a share of the length from the toe. */
  readonly widest: number;
  /** Half width at the heels over the greatest one. */
  readonly heel: number;
  /** By how much the outer side is wider than the inner one. */
  readonly lateralExcess: number;
}

/** Half width over the greatest one, at a share of the length from the toe. */
export function planWidth({ widest, roundness, heel }: FootPlan, share: number): number {
  if (share >= widest) return 1 - ((1 - heel) * (share - widest)) / (1 - widest);
  return (1 - (1 - share / widest) ** roundness) ** (1 / roundness);
}

/**
 * A foot drawn to a plan: the toe at (0, length), the heels on the x axis, the outer side to the right. Points lie at equal angles of
 * the toe's curve and in equal steps beyond, `steps` a piece; the place a quarter from the toe is one of them. Closed by points along
 * the heels.
 */
export function footOutline(plan: FootPlan, steps = 60): { readonly points: Point[]; readonly landmarks: FootLandmarks } {
  const { length, halfWidth, widest, heel, lateralExcess } = plan;
  const shares = Array.from({ length: steps }, (_, i) => widest * (1 - Math.cos((Math.PI * i) / (2 * steps))));
  shares.push(...Array.from({ length: steps }, (_, i) => widest + ((1 - widest) * i) / steps), 1);
  if (!shares.includes(0.25)) shares.push(0.25);
  shares.sort((a, b) => a - b);
  const side = (sign: number, width: number) =>
    shares.map((share) => ({ x: sign * width * planWidth(plan, share), y: length * (1 - share) }));
  const medial = side(-1, halfWidth);
  const lateral = side(1, halfWidth * (1 + lateralExcess));
  const [left, right] = [medial.at(-1)!.x, lateral.at(-1)!.x];
  const heels = Array.from({ length: steps }, (_, i) => ({ x: left + ((right - left) * (i + 1)) / (steps + 1), y: 0 }));
  return {
    points: [...medial, ...heels, ...lateral.reverse().slice(0, -1)],
    // The axis runs to the middle between the heels, so the landmarks stand at equal distances whatever the excess.
    landmarks: { toe: [0, length], heelMedial: [-halfWidth * heel, 0], heelLateral: [halfWidth * heel, 0] },
  };
}
