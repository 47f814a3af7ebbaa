/**
 * What must be left of a log-likelihood gap without its most telling part: one measure may have changed on its own, as a wall that flares
 * does. Common practice, no source.
 */
export const LEFT_WITHOUT_BEST = 4;

/** Sum of the parts of a gap, and what is left of it without the most telling one. */
export function withoutBest(parts: readonly number[]): { readonly gap: number; readonly rest: number } {
  const gap = parts.reduce((sum, part) => sum + part, 0);
  return { gap, rest: gap - Math.max(0, ...parts) };
}
