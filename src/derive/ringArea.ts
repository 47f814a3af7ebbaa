import type { PlanePoint } from "../study/PlanePoint.js";

/** Area within a closed ring, square mm; positive when it runs anticlockwise (shoelace formula). */
export function ringArea(ring: readonly PlanePoint[]): number {
  return (
    ring.reduce((sum, { x, y }, place) => {
      const next = ring[(place + 1) % ring.length]!;
      return sum + x * next.y - next.x * y;
    }, 0) / 2
  );
}
