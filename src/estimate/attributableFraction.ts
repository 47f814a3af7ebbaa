import { clusterBootstrap, type BootstrapEstimate } from "./clusterBootstrap.js";
import { requireRows } from "./design/requireRows.js";
import { EstimateError } from "./EstimateError.js";
import { mantelHaenszel } from "./mantelHaenszel.js";
import type { RandomSource } from "./numeric/RandomSource.js";
import { requireFinding } from "./numeric/requireFinding.js";
import type { TwoByTwo } from "./TwoByTwo.js";

/** One observation of an exposure and a finding. */
export interface ExposureRow {
  /** Null when not recorded. */
  readonly case: boolean | null;
  /** Null when not recorded. */
  readonly exposed: boolean | null;
  /** What is resampled together: the yard. */
  readonly cluster: string;
  /** What is held equal, such as a month; one stratum when left out. */
  readonly stratum?: string;
}

/** Share of cases that go with an exposure. */
export interface AttributableFraction {
  /** Of all cases. */
  readonly population: BootstrapEstimate;
  /** Of the cases among the exposed: (RR - 1) / RR. */
  readonly exposed: BootstrapEstimate;
  /** Mantel-Haenszel risk ratio over the strata. */
  readonly riskRatio: number | null;
  /** Share of cases that are exposed. */
  readonly exposedShare: number | null;
  readonly n: number;
  readonly cases: number;
  readonly missing: number;
}

/**
 * Share of the cases that would not be there if the exposed ran the risk of the unexposed, for an exposure that raises the risk
 * and stands for nothing else. That is a strong condition: in records it is a share that goes with the exposure.
 *
 * Method: population fraction = (share of cases exposed) x (RR - 1) / RR, with RR the Mantel-Haenszel risk ratio over `stratum`;
 * the fraction among the exposed is (RR - 1) / RR. Both are negative when the exposed run the lower risk. Limits by drawing
 * whole clusters with replacement (`clusterBootstrap`).
 *
 * Missing: rows with `case` or `exposed` null are left out and counted in `missing`. The fractions are null without cases,
 * without exposed or without unexposed.
 *
 * Errors: `empty` when no row is complete; `not_a_count`, `too_few` and `out_of_range` for replicates and level as in
 * `clusterBootstrap`; `not_a_number` and `out_of_range` for a case or an exposure that is neither yes nor no.
 *
 * Source: Miettinen OS (1974) Am J Epidemiol 99:325-332.
 */
export function attributableFraction(
  rows: readonly ExposureRow[],
  options: { readonly random: RandomSource; readonly replicates?: number; readonly level?: number },
): AttributableFraction {
  requireRows(rows);
  const complete = rows
    .filter((row) => row.case !== null && row.exposed !== null)
    .map((row) => ({ ...row, case: requireFinding("case", row.case), exposed: requireFinding("exposure", row.exposed) }));
  if (complete.length === 0) {
    throw new EstimateError("empty", "No row has both the finding and the exposure.", "Give at least one complete row.");
  }
  const groups = countsByCluster(complete);
  const { riskRatio, exposedShare } = parts(groups.flat());
  return {
    population: clusterBootstrap(groups, populationFraction, options),
    exposed: clusterBootstrap(groups, (sample) => excess(parts(sample).riskRatio), options),
    riskRatio,
    exposedShare,
    n: complete.length,
    cases: complete.filter((row) => row.case).length,
    missing: rows.length - complete.length,
  };
}

/** Counts of one stratum within one cluster. */
type Counts = { stratum: string } & { -readonly [Cell in keyof TwoByTwo]: number };

function countsByCluster(rows: readonly ExposureRow[]): Counts[][] {
  const clusters = new Map<string, Map<string, Counts>>();
  for (const { cluster, stratum = "", exposed, case: found } of rows) {
    const strata = clusters.get(cluster) ?? new Map<string, Counts>();
    clusters.set(cluster, strata);
    const counts = strata.get(stratum) ?? { stratum, a: 0, b: 0, c: 0, d: 0 };
    strata.set(stratum, counts);
    counts[exposed === true ? (found === true ? "a" : "b") : found === true ? "c" : "d"] += 1;
  }
  return [...clusters.values()].map((strata) => [...strata.values()]);
}

function populationFraction(counts: readonly Counts[]): number | null {
  const { riskRatio, exposedShare } = parts(counts);
  if (exposedShare === 0) return 0;
  const share = excess(riskRatio);
  return share === null || exposedShare === null ? null : exposedShare * share;
}

function parts(counts: readonly Counts[]): { riskRatio: number | null; exposedShare: number | null } {
  const strata = new Map<string, TwoByTwo>();
  for (const { stratum, a, b, c, d } of counts) {
    const sum = strata.get(stratum) ?? { a: 0, b: 0, c: 0, d: 0 };
    strata.set(stratum, { a: sum.a + a, b: sum.b + b, c: sum.c + c, d: sum.d + d });
  }
  const tables = [...strata.values()];
  const exposedCases = tables.reduce((sum, { a }) => sum + a, 0);
  const cases = tables.reduce((sum, { a, c }) => sum + a + c, 0);
  return {
    riskRatio: mantelHaenszel(tables, { measure: "riskRatio" }).estimate,
    exposedShare: cases === 0 ? null : exposedCases / cases,
  };
}

/** (RR - 1) / RR: 1 for an infinite ratio, null when the ratio is 0 or unknown. */
function excess(riskRatio: number | null): number | null {
  return riskRatio === null || riskRatio === 0 ? null : 1 - 1 / riskRatio;
}
