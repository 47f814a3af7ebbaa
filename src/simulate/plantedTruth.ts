import type { ExposureEffect } from "../estimate/ExposureEffect.js";
import { requireCount } from "../estimate/numeric/requireCount.js";
import { requireWithin } from "../estimate/numeric/requireWithin.js";
import type { ProportionInterval } from "../estimate/ProportionInterval.js";
import { wilsonInterval } from "../estimate/wilsonInterval.js";
import type { SeasonDesign } from "./SeasonDesign.js";
import { simulateSeasonStudy, type SeasonFoot } from "./simulateSeasonStudy.js";
import type { SimulationRuns } from "./SimulationRuns.js";

/** How one analysis did over simulated districts. */
export interface PlantedTruth {
  readonly name: string;
  /** Share of its intervals that hold the planted odds ratio; null when it never gave one. */
  readonly coverage: ProportionInterval | null;
  /** Share of runs in which it found an effect; runs in which it refused count as finding none. */
  readonly found: ProportionInterval;
  /** Mean of its log odds ratios, and their standard deviation. */
  readonly meanLogOdds: number | null;
  readonly sdLogOdds: number | null;
  readonly refused: number;
}

/**
 * Analyses against a planted truth: how often their intervals hold the odds ratio that each district was made with, and how often they find an effect.
 * With a planted odds ratio of 1 the latter is the true size of their tests; else their power.
 *
 * Method: run r is the district simulated from `${seed} ${r}`; all analyses of a run see the same one. `analyses` gives the effects, always the same ones in the same order.
 *
 * Errors: `not_a_count` for the runs; `out_of_range` for `alpha`; those of `simulateSeasonStudy`.
 */
export function plantedTruth(
  design: SeasonDesign,
  oddsRatio: number,
  analyses: (rows: readonly SeasonFoot[]) => readonly ExposureEffect[],
  { runs, seed, onRun, alpha = 0.05 }: SimulationRuns & { readonly alpha?: number },
): PlantedTruth[] {
  requireCount("runs", runs);
  requireWithin("alpha", alpha, 0, 1);
  const all: (readonly ExposureEffect[])[] = [];
  for (let run = 0; run < runs; run += 1) {
    all.push(analyses(simulateSeasonStudy(design, `${seed} ${run}`).rows));
    onRun?.(run + 1);
  }
  return (all[0] ?? []).map(({ name }, place) =>
    summary(
      name,
      all.map((effects) => effects[place]!),
      oddsRatio,
      alpha,
    ),
  );
}

function summary(name: string, effects: readonly ExposureEffect[], truth: number, alpha: number): PlantedTruth {
  const given = effects.filter(({ lower, upper }) => lower !== null && upper !== null);
  const held = given.filter(({ lower, upper }) => lower! <= truth && truth <= upper!).length;
  const logs = given.map(({ estimate }) => Math.log(estimate!));
  const mean = logs.length === 0 ? null : logs.reduce((sum, value) => sum + value, 0) / logs.length;
  const squares = logs.reduce((sum, value) => sum + (value - (mean ?? 0)) ** 2, 0);
  return {
    name,
    coverage: given.length === 0 ? null : wilsonInterval(held, given.length),
    found: wilsonInterval(effects.filter(({ p }) => p !== null && p < alpha).length, effects.length),
    meanLogOdds: mean,
    sdLogOdds: logs.length < 2 ? null : Math.sqrt(squares / (logs.length - 1)),
    refused: effects.length - given.length,
  };
}
