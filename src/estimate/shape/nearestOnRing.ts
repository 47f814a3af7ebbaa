import type { Ring } from "./Ring.js";

/** The place on an outline nearest to a point: its edge, how far along that edge (0 to 1), and how far off the point lies. */
export interface NearestPlace {
  readonly edge: number;
  readonly share: number;
  readonly distance: number;
}

/** Where an outline comes nearest to a point; the first of equals. */
export function nearestOnRing({ x, y, step }: Ring, px: number, py: number): NearestPlace {
  const n = x.length;
  let [edge, share, least] = [0, 0, Infinity];
  for (let i = 0; i < n; i += 1) {
    const next = i + 1 === n ? 0 : i + 1;
    const ux = x[next]! - x[i]!;
    const uy = y[next]! - y[i]!;
    const vx = px - x[i]!;
    const vy = py - y[i]!;
    const projected = (ux * vx + uy * vy) / (step[i]! * step[i]!);
    const t = projected < 0 ? 0 : projected > 1 ? 1 : projected;
    const dx = vx - t * ux;
    const dy = vy - t * uy;
    const away = dx * dx + dy * dy;
    if (away < least) {
      edge = i;
      share = t;
      least = away;
    }
  }
  return { edge, share, distance: Math.sqrt(least) };
}
