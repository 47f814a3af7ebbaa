/** Name of the column of an antecedent precipitation index: of the decay 0.925 a day 92.5 % is left, `apiMm92.5pct`. @private */
export function indexColumn(decayPerDay: number): `apiMm${number}pct` {
  // Without the dust of binary fractions.
  return `apiMm${Math.round(decayPerDay * 1e6) / 1e4}pct`;
}
