/** The mark last seen on a foot, and how many days before. */
export interface EarlierMark {
  readonly belowCoronetMm: number;
  readonly daysBefore: number;
}

/** Growth in mm a day about which marks move down, and its spread: the middle of 0.20 to 0.31 and a quarter of that range. */
const GROWTH = { mean: 0.255, sd: 0.028 };
/** Standard deviation of reading the distance twice, mm. Common practice, no source. */
const READING_SD = 2;
/** Share of marks that are written down again while they are on the wall. Common practice, no source. */
const SEEN_AGAIN = 0.8;
/** Where on the wall a mark may lie, mm; beyond that the foot may have lost it at the ground. */
const WALL_MM = 60;

/**
 * Log-likelihood that two feet exchanged their labels less that they did not, from the mark on the wall of each (mm below the coronet,
 * null for none) and the mark that each label had before: a mark stays on its foot and moves down with the horn.
 *
 * Method: a mark seen before is expected lower by 0.255 mm a day, and seen again with probability 0.8; a foot without an earlier mark has
 * a new one with probability `newShare`, anywhere on the wall. An earlier mark that may have grown out says nothing.
 *
 * Source: rates as in `markOrigins`; the likelihood is own.
 */
export function markFlip(
  seen: readonly [number | null, number | null],
  earlier: readonly [EarlierMark | null, EarlierMark | null],
  newShare: number,
): number {
  const log = (of: 0 | 1, label: 0 | 1): number => Math.log(chance(seen[of], earlier[label], newShare));
  return log(0, 1) + log(1, 0) - log(0, 0) - log(1, 1);
}

function chance(seen: number | null, earlier: EarlierMark | null, newShare: number): number {
  const fresh = seen === null ? 1 - newShare : newShare / WALL_MM;
  if (earlier === null) return fresh;
  const expected = earlier.belowCoronetMm + GROWTH.mean * earlier.daysBefore;
  if (expected > WALL_MM) return fresh;
  const sd = Math.hypot(READING_SD, GROWTH.sd * earlier.daysBefore);
  if (seen === null) return 1 - SEEN_AGAIN;
  const density = Math.exp(-(((seen - expected) / sd) ** 2) / 2) / (sd * Math.sqrt(2 * Math.PI));
  return SEEN_AGAIN * density + (1 - SEEN_AGAIN) * fresh;
}
