import type { PlanePoint } from "../../study/PlanePoint.js";

/** Places in the ring, from 0, of the first points of two steps that cross each other; null when the closed ring is simple. */
export function ringCrossing(ring: readonly PlanePoint[]): readonly [number, number] | null {
  const steps = ring.map((from, place) => ({ from, to: ring[(place + 1) % ring.length] ?? from }));
  for (const [first, one] of steps.entries()) {
    for (let second = first + 2; second < steps.length; second++) {
      const other = steps[second];
      if (other === undefined || (first === 0 && second === steps.length - 1)) continue;
      if (cross(one.from, one.to, other.from, other.to)) return [first, second];
    }
  }
  return null;
}

function cross(a: PlanePoint, b: PlanePoint, c: PlanePoint, d: PlanePoint): boolean {
  // Most pairs of steps lie apart.
  if (Math.max(a.x, b.x) < Math.min(c.x, d.x) || Math.max(c.x, d.x) < Math.min(a.x, b.x)) return false;
  if (Math.max(a.y, b.y) < Math.min(c.y, d.y) || Math.max(c.y, d.y) < Math.min(a.y, b.y)) return false;
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

/** Twice the area of the triangle, positive when c lies left of the way from a to b. */
function side(a: PlanePoint, b: PlanePoint, c: PlanePoint): number {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}
