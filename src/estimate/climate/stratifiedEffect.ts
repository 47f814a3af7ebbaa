import { describe } from "../describe.js";
import { binomialOutcome } from "../design/binomialOutcome.js";
import { groupIndex } from "../design/groupIndex.js";
import { numberColumn } from "../design/numberColumn.js";
import { designMatrix } from "../designMatrix.js";
import { EstimateError } from "../EstimateError.js";
import type { ExposureEffect } from "../ExposureEffect.js";
import type { ExposureModel } from "../ExposureModel.js";
import { mantelHaenszel } from "../mantelHaenszel.js";
import { tQuantile } from "../numeric/tQuantile.js";
import { tUpper } from "../numeric/tUpper.js";
import { clusterJackknife } from "./clusterJackknife.js";
import { refusedEffect } from "./refusedEffect.js";

type Table = [a: number, b: number, c: number, d: number];

/** Odds ratio of exposures above a number against the others, pooled over strata, or crude without; jackknife over the clusters. */
export function stratifiedEffect(model: ExposureModel & { readonly above?: number }, stratum: string | null): ExposureEffect {
  const { rows, outcome, exposure, groups, minimumGroups = 10, level = 0.95 } = model;
  const single = typeof outcome === "string";
  const also = [...groups, ...(stratum === null ? [] : [stratum])];
  const name = stratum === null ? "Crude, high against low" : `Mantel-Haenszel by ${stratum}`;
  const start = { name, contrast: exposure, adjustedFor: stratum === null ? [] : [stratum], level };
  return refusedEffect(start, () => {
    const options = { outcome: single ? outcome : outcome.cases, also, positive: single ? [] : [outcome.n] };
    const { used, dropped, n: rowCount } = designMatrix(rows, [exposure], options);
    const { cases, n } = binomialOutcome(rows, used, outcome);
    const amounts = numberColumn(rows, used, exposure);
    const above = model.above ?? describe([...amounts]).median;
    const strata = stratum === null ? null : groupIndex(rows, used, [stratum]);
    const outer = groupIndex(rows, used, groups.slice(0, 1));
    const few = outer.count < minimumGroups && groups.length === 2;
    const clusters = few ? groupIndex(rows, used, groups) : outer;
    const tables = Array.from({ length: clusters.count }, () => new Map<number, Table>());
    for (let i = 0; i < rowCount; i += 1) {
      const own = tables[clusters.index[i]!]!;
      const place = strata?.index[i] ?? 0;
      const table = own.get(place) ?? [0, 0, 0, 0];
      const at = amounts[i]! > above ? 0 : 2;
      table[at] += cases[i]!;
      table[at + 1]! += n[i]! - cases[i]!;
      own.set(place, table);
    }
    const found = clusterJackknife(tables, logOdds);
    if (found === null)
      throw new EstimateError("too_few", `No stratum compares ${exposure} above ${above} with the rest.`, "Use wider strata.");
    const df = clusters.count - 1;
    const reach = found.se === null ? null : Math.exp(tQuantile((1 + level) / 2, df) * found.se);
    const estimate = Math.exp(found.estimate);
    const by = few ? groups[1] : groups[0];
    return {
      ...start,
      contrast: `${exposure} above ${Number(above.toPrecision(4))} against the rest`,
      estimate,
      lower: reach === null ? null : estimate / reach,
      upper: reach === null ? null : estimate * reach,
      seLog: found.se,
      p: found.se === null || found.se === 0 ? null : 2 * tUpper(Math.abs(found.estimate) / found.se, df),
      df,
      n: n.reduce((sum, value) => sum + value, 0),
      cases: cases.reduce((sum, value) => sum + value, 0),
      missing: dropped.reduce((sum, { count }) => sum + count, 0),
      clusteredBy: by,
      clusters: clusters.count,
      refused: null,
      method: `${name}, odds ratio; jackknife over ${clusters.count} groups of ${by}, t with ${df} degrees of freedom`,
      note: found.se === null ? "Without one of the groups there is no estimate, so no limits are given." : null,
    };
  });
}

function logOdds(clusters: readonly ReadonlyMap<number, Table>[]): number | null {
  const strata = new Map<number, Table>();
  for (const cluster of clusters) {
    for (const [place, table] of cluster) {
      const sum = strata.get(place) ?? [0, 0, 0, 0];
      table.forEach((count, cell) => (sum[cell]! += count));
      strata.set(place, sum);
    }
  }
  if (strata.size === 0) return null;
  const { estimate } = mantelHaenszel([...strata.values()].map(([a, b, c, d]) => ({ a, b, c, d })));
  return estimate === null || estimate === 0 || estimate === Infinity ? null : Math.log(estimate);
}
