/** A band of rain: from its lower edge, up to but not including its upper one. */
export interface RainBand {
  readonly name: string;
  readonly fromMm: number;
  /** Infinity for the last band. */
  readonly toMm: number;
}

/**
 * Bands of rain for a table or a chart, from the given inner edges: `under 20 mm`, `20-40 mm`, `40 mm and more`.
 *
 * Method: half-open bands, the lower edge in and the upper one out, so that every amount is in exactly one.
 */
export function rainBands(edgesMm: readonly number[]): RainBand[] {
  const edges = [...new Set(edgesMm)].filter((edge) => edge > 0).sort((a, b) => a - b);
  const starts = [0, ...edges];
  return starts.map((fromMm, place) => {
    const toMm = starts[place + 1] ?? Infinity;
    const name =
      place === 0
        ? toMm === Infinity
          ? "any"
          : `under ${toMm} mm`
        : toMm === Infinity
          ? `${fromMm} mm and more`
          : `${fromMm}-${toMm} mm`;
    return { name, fromMm, toMm };
  });
}
