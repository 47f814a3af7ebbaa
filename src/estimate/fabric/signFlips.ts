import type { Expectations } from "./Expectations.js";
import { flipPart } from "./flipPart.js";
import type { Readings } from "./Readings.js";
import type { FlipGaps } from "./FlipGaps.js";

/**
 * Evidence that contrasts, such as left less right, have the wrong sign because two labels were swapped, for each row.
 *
 * Method: the parts of the measures (`flipPart`) are taken as independent and added (see `flipInflation` for what that overstates). When
 * nothing was swapped, the gap has mean -D / 2 and variance D = sum of 4 m^2 / v; when swapped, mean D / 2.
 *
 * Measures of one group, such as those that a flare moves together, count as one in `best`; every measure is a group of its own unless
 * `groups` numbers them.
 *
 * Missing: a measure that was not read or has no expectation says nothing.
 *
 * Source: own, from the normal likelihood.
 */
export function signFlips(
  { columns, values, starts }: Readings,
  { expected, variance }: Expectations,
  groups: readonly number[] = Array.from({ length: columns }, (_, column) => column),
): FlipGaps {
  const rows = starts[starts.length - 1] ?? 0;
  const gap: number[] = [];
  const information: number[] = [];
  const best: number[] = [];
  for (let row = 0; row < rows; row++) {
    let [sum, told] = [0, 0];
    const ofGroups: number[] = [];
    for (let at = row * columns; at < (row + 1) * columns; at++) {
      const [mean, spread] = [expected[at] ?? NaN, variance[at] ?? NaN];
      const part = flipPart(values[at] ?? NaN, mean, spread);
      if (Number.isNaN(part)) continue;
      sum += part;
      told += (4 * mean * mean) / spread;
      const group = groups[at - row * columns] ?? 0;
      ofGroups[group] = (ofGroups[group] ?? 0) + part;
    }
    gap.push(sum);
    information.push(told);
    best.push(ofGroups.reduce((most, part) => Math.max(most, part), 0));
  }
  return { gap, information, best };
}
