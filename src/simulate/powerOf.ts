import { EstimateError } from "../estimate/EstimateError.js";
import { requireCount } from "../estimate/numeric/requireCount.js";
import { requireWithin } from "../estimate/numeric/requireWithin.js";
import type { ProportionInterval } from "../estimate/ProportionInterval.js";
import { wilsonInterval } from "../estimate/wilsonInterval.js";
import type { NestedDesign } from "./NestedDesign.js";
import { simulateNestedStudy, type SimulatedFoot } from "./simulateNestedStudy.js";
import type { SimulationRuns } from "./SimulationRuns.js";

/** What a test can find in a design. */
export interface Power {
  /** Share of runs whose p value is below `alpha`; runs that were refused count as finding nothing. */
  readonly power: ProportionInterval;
  readonly alpha: number;
  /** Runs in which the test refused, by code. */
  readonly refused: ReadonlyMap<string, number>;
}

/**
 * Power of a test in a design, by simulation: the share of simulated studies in which it finds something. Run r is the study simulated
 * from `${seed} ${r}`. With a design whose planted effect is 0 this is the test's true size. `test` gives the p value.
 *
 * Errors: `not_a_count` and `empty` for the runs; `out_of_range` for `alpha` and for a p value outside 0 to 1; `not_a_number` for one
 * that is none; those of `simulateNestedStudy`.
 */
export function powerOf(
  design: NestedDesign,
  test: (rows: readonly SimulatedFoot[]) => number,
  { runs, seed, onRun, alpha = 0.05 }: SimulationRuns & { readonly alpha?: number },
): Power {
  requireCount("runs", runs);
  requireWithin("alpha", alpha, 0, 1);
  const refused = new Map<string, number>();
  let finds = 0;
  for (let run = 0; run < runs; run++) {
    const rows = simulateNestedStudy(design, `${seed} ${run}`);
    try {
      if (requireWithin("p value", test(rows), 0, 1) < alpha) finds++;
    } catch (fault) {
      if (!(fault instanceof EstimateError) || fault.code === "not_a_number" || fault.code === "out_of_range") throw fault;
      refused.set(fault.code, (refused.get(fault.code) ?? 0) + 1);
    }
    onRun?.(run + 1);
  }
  return { power: wilsonInterval(finds, runs), alpha, refused };
}
