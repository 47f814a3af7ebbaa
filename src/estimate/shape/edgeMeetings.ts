/**
 * Pairs of edges of a closed outline that meet where they should not: edges that cross or touch, and neighbours that fold back on
 * each other. Edge i runs from point i to the next. Pairs stand in order.
 *
 * Method: edges are taken from left to right along the longer side of the outline, and each is held only against those it overlaps
 * there: n log n for a traced outline. A point nearer to an edge than 1e-13 of the outline's size lies on it.
 */
export function edgeMeetings(x: Float64Array, y: Float64Array): readonly (readonly [number, number])[] {
  const n = x.length;
  const wide = span(x) >= span(y);
  const [u, v] = wide ? [x, y] : [y, x];
  const size = Math.max(span(x), span(y));
  const meet = meetingOf(u, v, 1e-13 * size * size);
  const next = (i: number) => (i + 1 === n ? 0 : i + 1);
  const first = u.map((value, i) => Math.min(value, u[next(i)]!));
  const last = u.map((value, i) => Math.max(value, u[next(i)]!));
  const order = Int32Array.from(first.keys()).sort((a, b) => first[a]! - first[b]!);
  const active = new Int32Array(n);
  const found: [number, number][] = [];
  const slack = 1e-13 * size;
  let count = 0;
  for (const edge of order) {
    let kept = 0;
    for (let k = 0; k < count; k += 1) {
      const other = active[k]!;
      if (last[other]! < first[edge]! - slack) continue;
      active[kept++] = other;
      if (meet(edge, other)) found.push(edge < other ? [edge, other] : [other, edge]);
    }
    active[kept++] = edge;
    count = kept;
  }
  return found.sort((a, b) => a[0] - b[0] || a[1] - b[1]);
}

function meetingOf(u: Float64Array, v: Float64Array, flat: number): (i: number, j: number) => boolean {
  const n = u.length;
  const side = (a: number, b: number, c: number): number => {
    const cross = (u[b]! - u[a]!) * (v[c]! - v[a]!) - (u[c]! - u[a]!) * (v[b]! - v[a]!);
    return Math.abs(cross) <= flat ? 0 : Math.sign(cross);
  };
  /** Whether c, which lies on the line through a and b, lies between them. */
  const between = (a: number, b: number, c: number): boolean =>
    (u[c]! - u[a]!) * (u[c]! - u[b]!) + (v[c]! - v[a]!) * (v[c]! - v[b]!) <= 0;
  /** Whether the edges a-b and b-c fold back on each other. */
  const folds = (a: number, b: number, c: number): boolean =>
    side(a, b, c) === 0 && (u[b]! - u[a]!) * (u[c]! - u[b]!) + (v[b]! - v[a]!) * (v[c]! - v[b]!) < 0;
  return (i, j) => {
    const [iEnd, jEnd] = [(i + 1) % n, (j + 1) % n];
    if (iEnd === j) return folds(i, j, jEnd);
    if (jEnd === i) return folds(j, i, iEnd);
    if (Math.max(v[i]!, v[iEnd]!) < Math.min(v[j]!, v[jEnd]!) || Math.max(v[j]!, v[jEnd]!) < Math.min(v[i]!, v[iEnd]!))
      return false;
    const [a, b] = [side(i, iEnd, j), side(i, iEnd, jEnd)];
    const [c, d] = [side(j, jEnd, i), side(j, jEnd, iEnd)];
    if (a * b < 0 && c * d < 0) return true;
    return (
      (a === 0 && between(i, iEnd, j)) ||
      (b === 0 && between(i, iEnd, jEnd)) ||
      (c === 0 && between(j, jEnd, i)) ||
      (d === 0 && between(j, jEnd, iEnd))
    );
  };
}

function span(values: Float64Array): number {
  let [low, high] = [Infinity, -Infinity];
  for (const value of values) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return high - low;
}
