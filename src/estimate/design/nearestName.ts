/** Insertions, deletions and replacements of one letter that turn a into b. */
function editDistance(a: string, b: string): number {
  let before = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= b.length; j += 1) {
      row.push(Math.min(before[j]! + 1, row[j - 1]! + 1, before[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1)));
    }
    before = row;
  }
  return before[b.length]!;
}

/** The name most like `wanted`, letter case and underscores ignored; null when there are no names. The first of equals. */
export function nearestName(wanted: string, names: readonly string[]): string | null {
  const plain = (name: string) => name.toLowerCase().replaceAll("_", "");
  let [nearest, least] = [null as string | null, Infinity];
  for (const name of names) {
    const distance = editDistance(plain(wanted), plain(name));
    if (distance < least) [nearest, least] = [name, distance];
  }
  return nearest;
}
