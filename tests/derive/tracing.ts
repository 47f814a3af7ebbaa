import type { OutlinePoint } from "../../src/study/OutlinePoint.js";

/** How an oval foot is traced for a test. */
export interface TracingOptions extends Partial<
  Pick<OutlinePoint, "horseId" | "visitDate" | "foot" | "stage" | "tracing" | "observerId">
> {
  /** Half width and half height of the oval, mm; the heels lie 60 degrees off its lowest point's opposite, so at -60 and -120 degrees. */
  readonly halfWidthMm?: number;
  readonly halfHeightMm?: number;
  readonly points?: number;
  readonly frogPoints?: number;
  /** Where the middle of the oval lies on the paper, and by how many degrees it is turned, anticlockwise. */
  readonly at?: readonly [number, number];
  readonly turnedDeg?: number;
  /** The outer heel lies left when seen towards the toe. */
  readonly outerLeft?: boolean;
}

/** Rows of outlines.csv of one oval foot: points numbered clockwise from the toe, landmarks, and a small oval frog. */
export function tracing(options: TracingOptions = {}): OutlinePoint[] {
  const { halfWidthMm = 60, halfHeightMm = 65, points = 48, frogPoints = 12, at = [0, 0], turnedDeg = 0 } = options;
  const { horseId = "A", visitDate = "2025-01-06", foot = "RF", stage = "before_trim", tracing: name = null } = options;
  const turn = (turnedDeg * Math.PI) / 180;
  const row = (ring: "wall" | "frog", point: string, x: number, y: number): OutlinePoint => ({
    ...{ file: "outlines.csv", line: 2, horseId, visitDate, foot, stage, tracing: name, observerId: options.observerId ?? null },
    ...{ ring, point },
    xMm: at[0] + x * Math.cos(turn) - y * Math.sin(turn),
    yMm: at[1] + x * Math.sin(turn) + y * Math.cos(turn),
  });
  const round = (count: number, ring: "wall" | "frog", a: number, b: number) =>
    Array.from({ length: count }, (_, place) => {
      const angle = Math.PI / 2 - (2 * Math.PI * place) / count;
      return row(ring, String(place + 1), a * Math.cos(angle), b * Math.sin(angle));
    });
  const heel = (degrees: number) => [halfWidthMm * cosine(degrees), halfHeightMm * cosine(degrees - 90)] as const;
  const outer = options.outerLeft === true ? -120 : -60;
  return [
    ...round(points, "wall", halfWidthMm, halfHeightMm),
    row("wall", "toe", 0, halfHeightMm),
    row("wall", "heel_lateral", ...heel(outer)),
    row("wall", "heel_medial", ...heel(-180 - outer)),
    ...round(frogPoints, "frog", 20, 35),
  ];
}

function cosine(degrees: number): number {
  return Math.cos((degrees * Math.PI) / 180);
}
