import type { OutlinePoint } from "../../study/OutlinePoint.js";
import type { PlanePoint } from "../../study/PlanePoint.js";

/** A place on a ring with the number of the point. */
export interface NumberedPoint extends PlanePoint {
  readonly number: number;
}

/** The rows of one tracing, put together. */
export interface TracingParts {
  /** The numbered points of each ring in the order of their numbers. */
  readonly rings: Readonly<Record<OutlinePoint["ring"], readonly NumberedPoint[]>>;
  /** The landmarks that were found, in the order in which they are looked for. */
  readonly landmarks: {
    readonly toe: PlanePoint | null;
    readonly heelMedial: PlanePoint | null;
    readonly heelLateral: PlanePoint | null;
  };
  /** Points that are neither. */
  readonly strange: readonly OutlinePoint[];
}

const isNumber = (point: string) => /^\d{1,9}$/.test(point);
const isLandmark = (point: string) => point === "toe" || point === "heel_medial" || point === "heel_lateral";

/** Rings and landmarks of the rows of one tracing. @private */
export function tracingParts(points: readonly OutlinePoint[]): TracingParts {
  const landmark = (name: string): PlanePoint | null => {
    const found = points.find(({ ring, point }) => ring === "wall" && point === name);
    return found === undefined ? null : { x: found.xMm, y: found.yMm };
  };
  const numbered = (name: OutlinePoint["ring"]) =>
    points
      .filter(({ ring, point }) => ring === name && isNumber(point))
      .map(({ point, xMm, yMm }) => ({ number: Number(point), x: xMm, y: yMm }))
      .sort((a, b) => a.number - b.number);
  return {
    rings: { wall: numbered("wall"), frog: numbered("frog") },
    landmarks: { toe: landmark("toe"), heelMedial: landmark("heel_medial"), heelLateral: landmark("heel_lateral") },
    strange: points.filter(({ ring, point }) => !isNumber(point) && !(ring === "wall" && isLandmark(point))),
  };
}
