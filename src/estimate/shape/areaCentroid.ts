/**
 * Area, positive when anticlockwise, and its centre, by Green's theorem. Taken from the first point, so that an outline far from the
 * origin keeps its digits. Without area the centre is NaN.
 */
export function areaCentroid(
  x: Float64Array,
  y: Float64Array,
): { readonly signedArea: number; readonly centroid: { readonly x: number; readonly y: number } } {
  const n = x.length;
  const [originX, originY] = [x[0]!, y[0]!];
  let [twice, momentX, momentY] = [0, 0, 0];
  let [ax, ay] = [x[n - 1]! - originX, y[n - 1]! - originY];
  for (let i = 0; i < n; i += 1) {
    const bx = x[i]! - originX;
    const by = y[i]! - originY;
    const cross = ax * by - bx * ay;
    twice += cross;
    momentX += (ax + bx) * cross;
    momentY += (ay + by) * cross;
    ax = bx;
    ay = by;
  }
  return { signedArea: twice / 2, centroid: { x: originX + momentX / (3 * twice), y: originY + momentY / (3 * twice) } };
}
