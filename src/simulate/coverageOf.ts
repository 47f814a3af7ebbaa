import { EstimateError } from "../estimate/EstimateError.js";
import { requireCount } from "../estimate/numeric/requireCount.js";
import type { ProportionInterval } from "../estimate/ProportionInterval.js";
import { wilsonInterval } from "../estimate/wilsonInterval.js";
import type { NestedDesign } from "./NestedDesign.js";
import { simulateNestedStudy, type SimulatedFoot } from "./simulateNestedStudy.js";
import type { SimulationRuns } from "./SimulationRuns.js";

/** An interval from one simulated study. */
export interface StudiedInterval {
  readonly estimate: number;
  readonly lower: number;
  readonly upper: number;
}

/** How an interval did over many simulated studies. */
export interface Coverage {
  /** Share of intervals that hold the truth, with limits for the number of runs; null when no run gave an interval. */
  readonly coverage: ProportionInterval | null;
  /** Runs that gave an interval. */
  readonly runs: number;
  /** Runs that gave none because the estimator refused, by code. */
  readonly refused: ReadonlyMap<string, number>;
  /** Intervals wholly above and wholly below the truth. */
  readonly tooHigh: number;
  readonly tooLow: number;
  readonly meanEstimate: number | null;
  /** Standard deviation of the estimates (n - 1): how much they really vary from study to study. */
  readonly sdOfEstimates: number | null;
  readonly meanWidth: number | null;
}

/**
 * How often intervals hold a planted number, over simulated studies: run r is the study simulated from `${seed} ${r}`. All intervals of
 * one call see the same studies. A refusal (`EstimateError`) is counted and left out; any other error goes through.
 *
 * Errors: `not_a_count` for the runs; those of `simulateNestedStudy`.
 */
export function coverageOf<Name extends string>(
  design: NestedDesign,
  truth: number,
  intervals: Readonly<Record<Name, (rows: readonly SimulatedFoot[]) => StudiedInterval>>,
  { runs, seed, onRun }: SimulationRuns,
): Readonly<Record<Name, Coverage>> {
  requireCount("runs", runs);
  const names = Object.keys(intervals) as Name[];
  const tallies = names.map((name) => ({ name, found: [] as StudiedInterval[], refused: new Map<string, number>() }));
  for (let run = 0; run < runs; run++) {
    const rows = simulateNestedStudy(design, `${seed} ${run}`);
    for (const { name, found, refused } of tallies) {
      try {
        found.push(intervals[name](rows));
      } catch (fault) {
        if (!(fault instanceof EstimateError)) throw fault;
        refused.set(fault.code, (refused.get(fault.code) ?? 0) + 1);
      }
    }
    onRun?.(run + 1);
  }
  const coverages = tallies.map(({ name, found, refused }) => [name, summary(found, truth, refused)]);
  return Object.fromEntries(coverages) as Record<Name, Coverage>;
}

function summary(list: readonly StudiedInterval[], truth: number, refused: ReadonlyMap<string, number>): Coverage {
  const n = list.length;
  const tooHigh = list.filter(({ lower }) => lower > truth).length;
  const tooLow = list.filter(({ upper }) => upper < truth).length;
  const mean = (pick: (interval: StudiedInterval) => number) =>
    n === 0 ? null : list.reduce((sum, interval) => sum + pick(interval), 0) / n;
  const meanEstimate = mean(({ estimate }) => estimate);
  const squares = list.reduce((sum, { estimate }) => sum + (estimate - (meanEstimate ?? 0)) ** 2, 0);
  return {
    coverage: n === 0 ? null : wilsonInterval(n - tooHigh - tooLow, n),
    runs: n,
    refused,
    tooHigh,
    tooLow,
    meanEstimate,
    sdOfEstimates: n < 2 ? null : Math.sqrt(squares / (n - 1)),
    meanWidth: mean(({ lower, upper }) => upper - lower),
  };
}
