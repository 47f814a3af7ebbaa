import type { FootVisit } from "../study/FootVisit.js";
import { grouped } from "../study/grouped.js";

/**
 * The stage at which most horses were measured, since stages are never pooled; of equal ones the first in the order of their names, an
 * unknown stage being its own. null also when there are no rows.
 *
 * @private
 */
export function mostUsedStage(rows: readonly Pick<FootVisit, "stage" | "horseId">[]): FootVisit["stage"] {
  const counts = [...grouped(rows, ({ stage }) => stage)].map(([stage, of]) => ({
    stage,
    horses: new Set(of.map(({ horseId }) => horseId)).size,
  }));
  counts.sort((a, b) => b.horses - a.horses || ((a.stage ?? "") < (b.stage ?? "") ? -1 : 1));
  return counts[0]?.stage ?? null;
}
