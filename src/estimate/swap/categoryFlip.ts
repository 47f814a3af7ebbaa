/** How often a foot showed each category on other days. */
export type CategoryHistory = ReadonlyMap<string, number>;

/** Stands for mistakes in a history without any: a fifth of a look for each category. Common practice, no source. */
const PSEUDO_LOOKS = 0.2;

/**
 * Log-likelihood that two feet exchanged their labels less that they did not, from what was seen of each, such as horn colours, and how
 * often each foot showed that on other days.
 *
 * Method: a category has the probability (times seen + 0.2) / (looks + 0.2 k), k the number of categories met in the two histories and
 * the two looks. A single wrong word cancels out where the other foot is unlike; only an exchange counts twice.
 *
 * Missing: 0 when either foot was not looked at or has fewer than `fewestDays` other days.
 *
 * Source: multinomial likelihood with pseudo-counts; own choice of their size.
 */
export function categoryFlip(
  seen: readonly [string | null, string | null],
  histories: readonly [CategoryHistory, CategoryHistory],
  fewestDays: number,
): number {
  const [first, second] = seen;
  if (first === null || second === null) return 0;
  const looks = histories.map((history) => [...history.values()].reduce((sum, count) => sum + count, 0));
  if (looks.some((count) => count < fewestDays)) return 0;
  const kinds = new Set([first, second, ...histories[0].keys(), ...histories[1].keys()]).size;
  const log = (category: string, of: 0 | 1): number =>
    Math.log(((histories[of].get(category) ?? 0) + PSEUDO_LOOKS) / ((looks[of] ?? 0) + PSEUDO_LOOKS * kinds));
  return log(first, 1) + log(second, 0) - log(first, 0) - log(second, 1);
}
