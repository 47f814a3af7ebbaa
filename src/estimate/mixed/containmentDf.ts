/**
 * Degrees of freedom of each coefficient by containment: a column that never changes within a group is judged against the
 * differences between those groups, and the groups of that kind, less the groups one level up and the coefficients judged
 * there, are what is left to judge by. The intercept goes with the outermost groups. `groups` holds the group number of each
 * row, outermost first; `total` is the number of observations. A result that is not positive means nothing is left.
 *
 * Source: Pinheiro JC & Bates DM (2000) Mixed-Effects Models in S and S-PLUS, section 2.4.2 (inner-outer rule; there the
 * intercept goes with the innermost level instead).
 */
export function containmentDf(columns: readonly Float64Array[], groups: readonly Int32Array[], total: number): readonly number[] {
  const counts = groups.map((group) => group.reduce((most, value) => Math.max(most, value + 1), 0));
  const levelOf = columns.map((column) => {
    const level = groups.findIndex((group, g) => constantWithin(column, group, counts[g]!));
    return level === -1 ? groups.length : level;
  });
  const sizes = [0, ...counts, total];
  return levelOf.map((level) => sizes[level + 1]! - sizes[level]! - levelOf.filter((other) => other === level).length);
}

function constantWithin(column: Float64Array, group: Int32Array, count: number): boolean {
  const first = new Float64Array(count).fill(NaN);
  for (let row = 0; row < column.length; row++) {
    const seen = first[group[row]!]!;
    if (Number.isNaN(seen)) first[group[row]!] = column[row]!;
    else if (seen !== column[row]) return false;
  }
  return true;
}
