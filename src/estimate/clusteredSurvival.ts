import { type BootstrapEstimate, clusterBootstrap } from "./clusterBootstrap.js";
import { requireRows } from "./design/requireRows.js";
import { riskTable } from "./numeric/riskTable.js";
import type { RandomSource } from "./numeric/RandomSource.js";
import { requireWithin } from "./numeric/requireWithin.js";
import type { SurvivalTime } from "./SurvivalTime.js";

/** What to read off and how to resample. */
export interface ClusteredSurvivalOptions<Row> {
  /** Time at which the curve is read off. */
  readonly time: number;
  /** Name of what is alike: the horse of a shoe. */
  readonly clusterOf: (row: Row) => string;
  /** With it, the share of the rows for which it is true less that of those for which it is false; null leaves a row out. */
  readonly compare?: (row: Row) => boolean | null;
  readonly random: RandomSource;
  readonly replicates?: number;
  readonly level?: number;
}

/** A share without the event, or a difference of two, with limits from resampled clusters. */
export interface ClusteredSurvival extends BootstrapEstimate {
  /** Rows used. */
  readonly n: number;
  /** Rows left out. */
  readonly missing: number;
}

/** Numbers at risk and events of one cluster at the event times of all, side by side. */
interface Tally {
  readonly atRisk: Float64Array;
  readonly events: Float64Array;
}

/**
 * Share without the event at one time, or the difference of two such shares, with limits that let rows of one cluster be alike.
 *
 * Method: the Kaplan-Meier estimate at `time`; percentile limits from resamples of whole clusters (`clusterBootstrap`). A resample in
 * which nothing is watched up to `time` has no value. The estimate is null when that is so of all rows.
 *
 * Missing: rows with time or event null are left out and counted, and with `compare` those for which it is null.
 *
 * Errors: those of `clusterBootstrap`; `not_a_number`; `out_of_range` for a negative time or an event that is neither yes nor no.
 *
 * Source: as `kaplanMeier` and `clusterBootstrap`.
 */
export function clusteredSurvival<Row extends SurvivalTime>(
  rows: readonly Row[],
  options: ClusteredSurvivalOptions<Row>,
): ClusteredSurvival {
  const { time, clusterOf, compare = () => true, random, replicates, level } = options;
  requireWithin("time", time, 0, Infinity);
  requireRows(rows);
  const kept = rows.filter((row) => row.time !== null && row.event !== null && compare(row) !== null);
  const times = riskTable(kept)
    .rows.map((row) => row.time)
    .filter((at) => at <= time);
  const clusters = new Map<string, [Tally, Tally, watched: [number, number]]>();
  for (const row of kept) {
    const key = clusterOf(row);
    const cluster = clusters.get(key) ?? [tallyOf(times), tallyOf(times), [0, 0]];
    clusters.set(key, cluster);
    const side = compare(row) === true ? 0 : 1;
    add(cluster[side], row as { time: number; event: boolean }, times);
    if (row.time! >= time) cluster[2][side] += 1;
  }
  const share = (side: 0 | 1) => (drawn: readonly [Tally, Tally, [number, number]][]) =>
    drawn.some(([, , watched]) => watched[side] > 0)
      ? survival(
          drawn.map((cluster) => cluster[side]),
          times.length,
        )
      : null;
  const [first, second] = [share(0), share(1)];
  const found = clusterBootstrap(
    [...clusters.values()].map((cluster) => [cluster]),
    (drawn) => {
      const one = first(drawn);
      if (options.compare === undefined) return one;
      const other = second(drawn);
      return one === null || other === null ? null : one - other;
    },
    { random, ...(replicates === undefined ? {} : { replicates }), ...(level === undefined ? {} : { level }) },
  );
  return { ...found, n: kept.length, missing: rows.length - kept.length };
}

function tallyOf(times: readonly number[]): Tally {
  return { atRisk: new Float64Array(times.length), events: new Float64Array(times.length) };
}

function add({ atRisk, events }: Tally, row: { readonly time: number; readonly event: boolean }, times: readonly number[]): void {
  for (let place = 0; place < times.length && times[place]! <= row.time; place++) {
    atRisk[place]! += 1;
    if (row.event && times[place] === row.time) events[place]! += 1;
  }
}

function survival(tallies: readonly Tally[], length: number): number {
  let share = 1;
  for (let place = 0; place < length; place++) {
    let [atRisk, events] = [0, 0];
    for (const tally of tallies) [atRisk, events] = [atRisk + tally.atRisk[place]!, events + tally.events[place]!];
    if (atRisk > 0) share *= 1 - events / atRisk;
  }
  return share;
}
