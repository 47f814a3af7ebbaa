const FARTHEST = 2;

/**
 * The known name most like a given one, when it is close enough to be a slip of the pen: equal but for case, spaces and
 * hyphens, or at most two slips, and no more than one for three letters of the name. A slip is a letter inserted, dropped or changed, or two
 * neighbours swapped (optimal string alignment, Damerau 1964). null: none.
 * @private
 */
export function nearestName(name: string, known: Iterable<string>): string | null {
  const plain = plainOf(name);
  const limit = Math.min(FARTHEST, Math.floor(plain.length / 3));
  let nearest: string | null = null;
  let least = limit + 1;
  for (const candidate of known) {
    const other = plainOf(candidate);
    if (Math.abs(other.length - plain.length) >= least) continue;
    const steps = distance(plain, other);
    if (steps < least) [nearest, least] = [candidate, steps];
    if (least === 0) break;
  }
  return nearest;
}

function plainOf(name: string): string {
  return name.toLowerCase().replace(/[\s_-]+/g, "");
}

function distance(a: string, b: string): number {
  let twoAbove: readonly number[] = [];
  let above: readonly number[] = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (let row = 1; row <= a.length; row++) {
    const current = [row];
    for (let column = 1; column <= b.length; column++) {
      const change = (above[column - 1] ?? 0) + (a[row - 1] === b[column - 1] ? 0 : 1);
      const swapped = row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1];
      const swap = swapped ? (twoAbove[column - 2] ?? 0) + 1 : Infinity;
      current.push(Math.min(change, swap, (above[column] ?? 0) + 1, (current[column - 1] ?? 0) + 1));
    }
    [twoAbove, above] = [above, current];
  }
  return above[b.length] ?? 0;
}
