import { tQuantile } from "../numeric/tQuantile.js";
import type { TwoByTwo } from "../TwoByTwo.js";
import { grouped } from "../../study/grouped.js";

/** A visit to a horse by one observer, and the yard and quarter it counts in. */
export interface HorseVisit {
  readonly horseId: string;
  readonly observerId: string;
  readonly stratum: string;
  readonly thrush: boolean;
}

/** Odds of thrush under one observer against those under the others. */
export interface OddsShift {
  readonly ratio: number;
  readonly lower: number;
  readonly upper: number;
  /** Visits in the strata used: cases and others by the observer, cases and others by the rest. */
  readonly table: TwoByTwo;
  /** Horses that the interval rests on. */
  readonly horses: number;
}

/** With fewer horses the spread from leaving one out is not known. Common practice, no source. */
const FEWEST_HORSES = 10;

/**
 * Odds of thrush under one observer against those under all others, pooled over strata, with an interval that honours that visits to one
 * horse hang together.
 *
 * Method: Mantel-Haenszel odds ratio; the standard error of its logarithm is the jackknife's over horses, limits by t with one degree of
 * freedom less than horses.
 *
 * Missing: strata without the observer, or without another, say nothing. null with fewer than ten horses, or where without one horse no
 * odds ratio is left.
 *
 * Source: Mantel N, Haenszel W (1959) J Natl Cancer Inst 22:719-748; jackknife: Efron B, Stein C (1981) Ann Stat 9:586-596 (from memory).
 */
export function oddsShift(strata: readonly (readonly HorseVisit[])[], observerId: string, level: number): OddsShift | null {
  const used = strata.filter((visits) => {
    const own = visits.filter((visit) => visit.observerId === observerId).length;
    return own > 0 && own < visits.length;
  });
  const tables = used.map((visits) => tableOf(visits, observerId));
  const [r, s] = [sumOf(tables, forOdds), sumOf(tables, againstOdds)];
  const horses = grouped(
    used.flatMap((visits, at) => visits.map((visit) => ({ visit, at }))),
    ({ visit }) => visit.horseId,
  );
  if (horses.size < FEWEST_HORSES) return null;
  const logs = [...horses.values()].map((ofHorse) => {
    let [left, against] = [r, s];
    for (const [at, own] of grouped(ofHorse, (each) => each.at)) {
      const table = tables[at];
      if (table === undefined) continue;
      const gone = tableOf(
        own.map(({ visit }) => visit),
        observerId,
      );
      const rest = { a: table.a - gone.a, b: table.b - gone.b, c: table.c - gone.c, d: table.d - gone.d };
      left += forOdds(rest) - forOdds(table);
      against += againstOdds(rest) - againstOdds(table);
    }
    return Math.log(left / against);
  });
  const mean = logs.reduce((sum, log) => sum + log, 0) / logs.length;
  const squares = logs.reduce((sum, log) => sum + (log - mean) ** 2, 0);
  if (!Number.isFinite(squares)) return null;
  const reach = tQuantile((1 + level) / 2, horses.size - 1) * Math.sqrt((squares * (horses.size - 1)) / horses.size);
  const ratio = r / s;
  const total = (cell: keyof TwoByTwo) => sumOf(tables, (table) => table[cell]);
  return {
    ratio,
    lower: ratio * Math.exp(-reach),
    upper: ratio * Math.exp(reach),
    table: { a: total("a"), b: total("b"), c: total("c"), d: total("d") },
    horses: horses.size,
  };
}

function tableOf(visits: readonly HorseVisit[], observerId: string): TwoByTwo {
  const table = { a: 0, b: 0, c: 0, d: 0 };
  for (const { observerId: by, thrush } of visits) table[by === observerId ? (thrush ? "a" : "b") : thrush ? "c" : "d"] += 1;
  return table;
}

function forOdds({ a, b, c, d }: TwoByTwo): number {
  return a === 0 || d === 0 ? 0 : (a * d) / (a + b + c + d);
}

function againstOdds({ a, b, c, d }: TwoByTwo): number {
  return b === 0 || c === 0 ? 0 : (b * c) / (a + b + c + d);
}

function sumOf<Item>(items: readonly Item[], value: (item: Item) => number): number {
  return items.reduce((sum, item) => sum + value(item), 0);
}
