/**
 * What an interval allows to be said of a difference: one of three wordings, by whether it lies above `none`, below it, or holds it.
 * Without limits nothing is claimed either.
 */
export function compared(
  of: { readonly lower: number | null; readonly upper: number | null },
  none: number,
  words: { readonly above: string; readonly below: string; readonly unclear: string },
): string {
  if (of.lower !== null && of.lower > none) return words.above;
  if (of.upper !== null && of.upper < none) return words.below;
  return words.unclear;
}
