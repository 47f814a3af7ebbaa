/** Matrix of second derivatives of a smooth function by central differences of its values, row after row. Error of the order of `step` squared. */
export function secondDifferences(f: (x: Float64Array) => number, at: Float64Array, step: number): Float64Array {
  const size = at.length;
  const value = (i: number, a: number, j: number, b: number) => {
    const x = at.slice();
    x[i]! += a * step;
    x[j]! += b * step;
    return f(x);
  };
  return Float64Array.from({ length: size * size }, (_, place) => {
    const [i, j] = [Math.floor(place / size), place % size];
    if (i === j) return (value(i, 1, i, 0) - 2 * f(at) + value(i, -1, i, 0)) / step ** 2;
    return (value(i, 1, j, 1) - value(i, 1, j, -1) - value(i, -1, j, 1) + value(i, -1, j, -1)) / (4 * step ** 2);
  });
}
