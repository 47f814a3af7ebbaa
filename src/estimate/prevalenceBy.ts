import { requireCount } from "./numeric/requireCount.js";
import { prevalence, type Prevalence } from "./prevalence.js";
import type { PrevalenceRow } from "./PrevalenceRow.js";

/** Prevalence in one group of rows. */
export interface PrevalenceGroup {
  readonly group: string;
  /** Rows of the group, known or not. */
  readonly rows: number;
  /** Horses with at least one known row. */
  readonly horses: number;
  /** Null when the group is too small to stand on its own; `note` then says so. */
  readonly prevalence: Prevalence | null;
  readonly note: string | null;
}

/**
 * Prevalence of a finding in groups of rows, such as rain bands, months or yards, with no estimate for groups that are too small.
 *
 * Method: `prevalence` within each group. A group with fewer than `minimumHorses` horses whose finding is known (5 unless given)
 * gets none, so that chance in a handful of horses is not read as a pattern. Groups stand in the order of `order`, also those
 * without rows, then all others by name. The same horse may stand in several groups: their intervals are not independent, so two
 * of them not overlapping is no test.
 *
 * Missing: rows for which `groupOf` gives null are left out and counted in `ungrouped`; a null finding is handled as in
 * `prevalence`.
 *
 * Errors: `not_a_count` for `minimumHorses` or `minimumYards`; `out_of_range` for a level not between 0 and 1.
 *
 * Source: as `prevalence`; the limit of 5 horses is common practice, no source.
 */
export function prevalenceBy<Row extends PrevalenceRow>(
  rows: readonly Row[],
  groupOf: (row: Row) => string | null,
  options: {
    readonly level?: number;
    readonly minimumHorses?: number;
    readonly minimumYards?: number;
    readonly order?: readonly string[];
  } = {},
): { readonly groups: readonly PrevalenceGroup[]; readonly ungrouped: number } {
  const { minimumHorses = 5, order = [], ...rest } = options;
  requireCount("minimum number of horses", minimumHorses);
  const groups = new Map<string, Row[]>(order.map((name) => [name, []]));
  let ungrouped = 0;
  for (const row of rows) {
    const name = groupOf(row);
    if (name === null) ungrouped += 1;
    else
      groups
        .set(name, groups.get(name) ?? [])
        .get(name)
        ?.push(row);
  }
  const others = [...groups.keys()].filter((name) => !order.includes(name)).sort();
  return {
    groups: [...new Set(order), ...others].map((group) => {
      const own = groups.get(group) ?? [];
      const horses = new Set(own.filter((row) => row.case !== null).map((row) => row.horseId)).size;
      const enough = horses >= Math.max(1, minimumHorses);
      return {
        group,
        rows: own.length,
        horses,
        prevalence: enough ? prevalence(own, rest) : null,
        note: enough ? null : `${horses} horses with a known finding; fewer than ${minimumHorses} get no estimate of their own.`,
      };
    }),
    ungrouped,
  };
}
