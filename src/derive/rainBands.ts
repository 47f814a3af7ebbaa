/** A band of rain: from its lower edge, up to but not including its upper one. */
export interface RainBand {
  /** For an axis: `20-40`. */
  readonly name: string;
  /** For a sentence: `20 to 40 mm`. */
  readonly words: string;
  readonly fromMm: number;
  /** Infinity for the last band. */
  readonly toMm: number;
}

/**
 * Bands of rain for a table or a chart, from the given inner edges: `under 20`, `20-40`, `40 or more`, in mm.
 *
 * Method: half-open bands, the lower edge in and the upper one out, so that every amount is in exactly one.
 */
export function rainBands(edgesMm: readonly number[]): RainBand[] {
  const edges = [...new Set(edgesMm)].filter((edge) => edge > 0).sort((a, b) => a - b);
  const starts = [0, ...edges];
  return starts.map((fromMm, place) => {
    const toMm = starts[place + 1] ?? Infinity;
    if (toMm < Infinity) {
      return place === 0
        ? { name: `under ${toMm}`, words: `under ${toMm} mm`, fromMm, toMm }
        : { name: `${fromMm}-${toMm}`, words: `${fromMm} to ${toMm} mm`, fromMm, toMm };
    }
    return place === 0
      ? { name: "any", words: "any amount", fromMm, toMm }
      : { name: `${fromMm} or more`, words: `${fromMm} mm or more`, fromMm, toMm };
  });
}
