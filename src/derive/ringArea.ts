import type { PlanePoint } from "./PlanePoint.js";

/** Area within a closed ring, square mm; positive when it runs anticlockwise (shoelace formula). */
export function ringArea(ring: readonly PlanePoint[]): number {
  return (
    ring.reduce((sum, { xMm, yMm }, place) => {
      const next = ring[(place + 1) % ring.length]!;
      return sum + xMm * next.yMm - next.xMm * yMm;
    }, 0) / 2
  );
}
