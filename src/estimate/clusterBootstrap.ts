import { quantileSorted } from "simple-statistics";
import { EstimateError } from "./EstimateError.js";
import type { Interval } from "./Interval.js";
import type { RandomSource } from "./numeric/RandomSource.js";
import { requireCount } from "./numeric/requireCount.js";
import { requireLevel } from "./numeric/requireLevel.js";
import { requireRandom } from "./numeric/requireRandom.js";

/** A statistic with limits from resampled clusters. */
export interface BootstrapEstimate extends Interval {
  /** Standard deviation of the replicates; null when there are no limits. */
  readonly se: number | null;
  readonly clusters: number;
  /** Replicates the limits rest on. */
  readonly replicates: number;
  /** Replicates in which the statistic had no value. */
  readonly failed: number;
}

/**
 * Percentile interval of any statistic of clustered rows, by drawing whole clusters (yards, or horses) with replacement.
 *
 * Method: each replicate draws as many clusters as there are and computes the statistic on all their rows; the limits are the
 * (1 - level)/2 and (1 + level)/2 quantiles (type 7) of the replicates. `statistic` returns null where it has no value; such
 * replicates are counted in `failed`, and when they are more than one in ten there are no limits. Equal seeds give equal
 * limits. With few clusters (below about 10) the limits are too narrow.
 *
 * Missing: `statistic` decides, and has to leave out nulls itself. Clusters without rows are left out.
 *
 * Errors: `empty` when no cluster has rows or nothing to draw with is given; `not_a_number` when the statistic gives no finite number; `not_a_count`; `too_few` for fewer than
 * 100 replicates; `out_of_range` for a level not between 0 and 1.
 *
 * Source: Davison AC, Hinkley DV (1997) Bootstrap Methods and their Application, sections 3.8 and 5.3.
 */
export function clusterBootstrap<Row>(
  clusters: readonly (readonly Row[])[],
  statistic: (rows: readonly Row[]) => number | null,
  options: { readonly random: RandomSource; readonly replicates?: number; readonly level?: number },
): BootstrapEstimate {
  const random = requireRandom(options.random);
  const level = requireLevel(options.level ?? 0.95);
  const turns = requireCount("number of replicates", options.replicates ?? 2000);
  if (turns < 100) throw new EstimateError("too_few", `${turns} replicates are too few for limits.`, "Ask for 100 or more.");
  const filled = clusters.filter((cluster) => cluster.length > 0);
  const k = filled.length;
  if (k === 0) throw new EstimateError("empty", "No cluster has rows.", "Give at least one row.");
  const value = (rows: readonly Row[]): number | null => {
    const found = statistic(rows);
    if (found === null || Number.isFinite(found)) return found;
    throw new EstimateError(
      "not_a_number",
      `The statistic gave ${found}.`,
      "Let the statistic return null where it has no value.",
    );
  };
  const estimate = value(filled.flat());
  const method = `Percentile bootstrap of ${k} clusters`;
  const none = { estimate, se: null, lower: null, upper: null, level, clusters: k, replicates: 0, failed: 0, method };
  if (k === 1) return { ...none, note: "There is one cluster, so nothing can be resampled and no limits are given." };
  const values: number[] = [];
  for (let turn = 0; turn < turns; turn += 1) {
    const found = value(drawn(filled, random));
    if (found !== null) values.push(found);
  }
  const failed = turns - values.length;
  if (failed > turns / 10) {
    const note = `The statistic had no value in ${failed} of ${turns} replicates, so no limits are given.`;
    return { ...none, replicates: values.length, failed, note };
  }
  values.sort((a, b) => a - b);
  const mean = values.reduce((a, b) => a + b, 0) / values.length;
  return {
    ...none,
    se: Math.sqrt(values.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (values.length - 1)),
    lower: quantileSorted(values, (1 - level) / 2),
    upper: quantileSorted(values, (1 + level) / 2),
    replicates: values.length,
    failed,
    note: k < 10 ? `${k} clusters are few: the limits are narrower than they should be.` : null,
  };
}

/** The rows of as many clusters as there are, drawn with replacement. */
function drawn<Row>(clusters: readonly (readonly Row[])[], random: RandomSource): Row[] {
  const rows: Row[] = [];
  clusters.forEach(() => {
    for (const row of random.pick(clusters)) rows.push(row);
  });
  return rows;
}
