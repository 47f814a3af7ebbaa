import { clusterBootstrap, type BootstrapEstimate } from "./clusterBootstrap.js";
import { EstimateError } from "./EstimateError.js";
import { mantelHaenszel } from "./mantelHaenszel.js";
import type { RandomSource } from "./numeric/RandomSource.js";
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
 * `clusterBootstrap`.
 *
 * Source: Miettinen OS (1974) Am J Epidemiol 99:325-332.
 */
export function attributableFraction(
  rows: readonly ExposureRow[],
  options: { readonly random: RandomSource; readonly replicates?: number; readonly level?: number },
): AttributableFraction {
  const complete = rows.filter((row) => row.case !== null && row.exposed !== null);
  if (complete.length === 0) {
    throw new EstimateError("empty", "No row has both the finding and the exposure.", "Give at least one complete row.");
  }
  const clusters = new Map<string, ExposureRow[]>();
  for (const row of complete) clusters.set(row.cluster, [...(clusters.get(row.cluster) ?? []), row]);
  const groups = [...clusters.values()];
  const { riskRatio, exposedShare } = parts(complete);
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

function populationFraction(rows: readonly ExposureRow[]): number | null {
  const { riskRatio, exposedShare } = parts(rows);
  if (exposedShare === 0) return 0;
  const share = excess(riskRatio);
  return share === null || exposedShare === null ? null : exposedShare * share;
}

function parts(rows: readonly ExposureRow[]): { riskRatio: number | null; exposedShare: number | null } {
  const strata = new Map<string, { a: number; b: number; c: number; d: number }>();
  for (const row of rows) {
    const table = strata.get(row.stratum ?? "") ?? { a: 0, b: 0, c: 0, d: 0 };
    strata.set(row.stratum ?? "", table);
    table[row.exposed === true ? (row.case === true ? "a" : "b") : row.case === true ? "c" : "d"] += 1;
  }
  const tables: readonly TwoByTwo[] = [...strata.values()];
  const [exposedCases, cases] = tables.reduce<readonly [number, number]>(([x, y], { a, c }) => [x + a, y + a + c], [0, 0]);
  return {
    riskRatio: mantelHaenszel(tables, { measure: "riskRatio" }).estimate,
    exposedShare: cases === 0 ? null : exposedCases / cases,
  };
}

/** (RR - 1) / RR: 1 for an infinite ratio, null when the ratio is 0 or unknown. */
function excess(riskRatio: number | null): number | null {
  return riskRatio === null || riskRatio === 0 ? null : 1 - 1 / riskRatio;
}
