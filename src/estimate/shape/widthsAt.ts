/**
 * How far an outline reaches to both sides at each level along its axis: least and greatest place across on the line at that level,
 * `Infinity` and `-Infinity` where the line misses the outline. Levels must ascend.
 */
export function widthsAt(
  along: Float64Array,
  across: Float64Array,
  levels: Float64Array,
): { readonly least: Float64Array; readonly greatest: Float64Array } {
  const n = along.length;
  const m = levels.length;
  const least = new Float64Array(m).fill(Infinity);
  const greatest = new Float64Array(m).fill(-Infinity);
  // Consecutive edges lie at consecutive levels, so the search goes on from where the last one ended.
  let level = 0;
  let [a, b] = [along[n - 1]!, across[n - 1]!];
  for (let i = 0; i < n; i += 1) {
    const nextA = along[i]!;
    const nextB = across[i]!;
    const low = a < nextA ? a : nextA;
    const high = a < nextA ? nextA : a;
    while (level > 0 && levels[level - 1]! >= low) level -= 1;
    while (level < m && levels[level]! < low) level += 1;
    for (; level < m && levels[level]! <= high; level += 1) {
      // At the ends the corner itself, so that no rounding moves it.
      const at = levels[level]!;
      const place = at === a ? b : at === nextA ? nextB : b + ((at - a) / (nextA - a)) * (nextB - b);
      if (place < least[level]!) least[level] = place;
      if (place > greatest[level]!) greatest[level] = place;
      if (high === low && nextB < least[level]!) least[level] = nextB;
      if (high === low && nextB > greatest[level]!) greatest[level] = nextB;
    }
    a = nextA;
    b = nextB;
  }
  return { least, greatest };
}
