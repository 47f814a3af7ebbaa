/**
 * Corners of the convex hull of an outline that does not cross itself, as indices in its order.
 *
 * Method: Melkman's, which reads the outline once; it begins at the sharpest corner, where three points cannot lie on one line.
 *
 * Source: Melkman AA (1987) On-line construction of the convex hull of a simple polyline, Inf Process Lett 25:11-12.
 */
export function convexHull(x: Float64Array, y: Float64Array): Int32Array {
  const n = x.length;
  const start = sharpest(x, y);
  const [first, second, third] = [start, (start + 1) % n, (start + 2) % n];
  const deque = new Int32Array(2 * n + 1);
  let bottom = n - 1;
  let top = n + 2;
  const left = side(x, y, first, second, third) > 0;
  deque.set(left ? [third, first, second, third] : [third, second, first, third], bottom);
  for (let k = 3; k < n; k += 1) {
    const point = start + k < n ? start + k : start + k - n;
    if (side(x, y, deque[bottom]!, deque[bottom + 1]!, point) >= 0 && side(x, y, deque[top - 1]!, deque[top]!, point) >= 0)
      continue;
    while (top > bottom + 1 && side(x, y, deque[top - 1]!, deque[top]!, point) <= 0) top -= 1;
    deque[++top] = point;
    while (bottom < top - 1 && side(x, y, point, deque[bottom]!, deque[bottom + 1]!) <= 0) bottom += 1;
    deque[--bottom] = point;
  }
  return deque.slice(bottom, top);
}

/** Twice the area of a triangle, positive when its corners run anticlockwise. */
function side(x: Float64Array, y: Float64Array, a: number, b: number, c: number): number {
  return (x[b]! - x[a]!) * (y[c]! - y[a]!) - (x[c]! - x[a]!) * (y[b]! - y[a]!);
}

/** Index of the point before the corner with the largest triangle. */
function sharpest(x: Float64Array, y: Float64Array): number {
  const n = x.length;
  let [best, most] = [0, -1];
  for (let i = 0; i < n; i += 1) {
    const j = i + 1 < n ? i + 1 : i + 1 - n;
    const k = i + 2 < n ? i + 2 : i + 2 - n;
    const triangle = Math.abs(side(x, y, i, j, k));
    if (triangle > most) {
      best = i;
      most = triangle;
    }
  }
  return best;
}
