/** Stands for mistakes in a history without any: a fifth of a look for each category. Common practice, no source. */
const PSEUDO_LOOKS = 0.2;

/**
 * Log-likelihood that two feet exchanged their labels less that they did not, from the category seen of each, such as its horn colour, and how
 * often each foot showed every category on other days.
 *
 * Method: a category has the probability (times seen + 0.2) / (looks + 0.2 k), k the number of categories met in the two histories and
 * the two looks. A single wrong word cancels out where the other foot is unlike; only an exchange counts twice.
 *
 * Missing: 0 when either foot has fewer than `fewestDays` other days.
 *
 * Source: multinomial likelihood with pseudo-counts; own choice of their size.
 */
export function categoryFlip(
  [first, second]: readonly [number, number],
  [ofFirst, ofSecond]: readonly [readonly number[], readonly number[]],
  fewestDays: number,
): number {
  const looks = [sumOf(ofFirst), sumOf(ofSecond)] as const;
  if (first === second || Math.min(...looks) < fewestDays) return 0;
  const kinds = ofFirst.filter(
    (count, kind) => count > 0 || (ofSecond[kind] ?? 0) > 0 || kind === first || kind === second,
  ).length;
  const log = (kind: number, history: readonly number[], of: number): number =>
    Math.log(((history[kind] ?? 0) + PSEUDO_LOOKS) / (of + PSEUDO_LOOKS * kinds));
  const swapped = log(first, ofSecond, looks[1]) + log(second, ofFirst, looks[0]);
  return swapped - log(first, ofFirst, looks[0]) - log(second, ofSecond, looks[1]);
}

function sumOf(counts: readonly number[]): number {
  return counts.reduce((sum, count) => sum + count, 0);
}
