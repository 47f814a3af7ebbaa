import { Matrix, pseudoInverse } from "ml-matrix";
import { requireRows } from "./design/requireRows.js";
import { EstimateError } from "./EstimateError.js";
import { chiSquareTest } from "./numeric/chiSquareTest.js";
import { requireNumber } from "./numeric/requireNumber.js";
import { riskTable, type RiskRow } from "./numeric/riskTable.js";
import type { SurvivalTime } from "./SurvivalTime.js";

/** Log-rank test that groups share one survival curve. */
export interface LogRankTest {
  /** Null when no event happened while two groups were at risk. */
  readonly chiSquare: number | null;
  readonly df: number;
  readonly p: number | null;
  /** Complete rows, events seen and events expected under one common curve, group by group. */
  readonly groups: readonly { readonly n: number; readonly observed: number; readonly expected: number }[];
  /** Variances and covariances of observed minus expected. */
  readonly variance: readonly (readonly number[])[];
  readonly missing: number;
  readonly method: string;
}

/**
 * Log-rank test that two or more groups have the same curve of time to an event.
 *
 * Method: at each event time the events expected in each group are its share of those at risk; observed minus expected, with
 * the hypergeometric variance, give chi-square on groups - 1 degrees of freedom (groups never at risk at an event are not
 * counted). With `rho` above 0 each time is weighted by the pooled survival just before it to the power rho: 1 is the
 * Peto-Peto form, which looks at early differences; observed and expected are then weighted sums.
 *
 * Missing: rows with time or event null are left out and counted in `missing`.
 *
 * Errors: `too_few` for fewer than two groups; `empty` for a group without a complete row; `not_a_number`; `out_of_range` for a
 * negative time, an event that is neither yes nor no or a row that is no record.
 *
 * Source: Mantel N (1966) Cancer Chemother Rep 50:163-170; Peto R, Peto J (1972) J R Stat Soc A 135:185-206; Harrington DP,
 * Fleming TR (1982) Biometrika 69:553-566 (rho).
 */
export function logRank(groups: readonly (readonly SurvivalTime[])[], options: { readonly rho?: number } = {}): LogRankTest {
  const rho = requireNumber("rho", options.rho ?? 0);
  if (groups.length < 2) throw new EstimateError("too_few", "There are fewer than two groups.", "Give two groups or more.");
  groups.forEach(requireRows);
  const tables = groups.map(riskTable);
  if (tables.some((table) => table.n === 0)) {
    throw new EstimateError("empty", "A group has no row with both a time and an event.", "Leave the empty group out.");
  }
  const pooled = riskTable(groups.flat());
  const observed = groups.map(() => 0);
  const expected = groups.map(() => 0);
  const variance = groups.map(() => groups.map(() => 0));
  let survival = 1;
  for (const row of pooled.rows) {
    const weight = survival ** rho;
    survival *= 1 - row.events / row.atRisk;
    const share = groups.map((group) => atRiskAt(group, row.time) / row.atRisk);
    const spread = row.atRisk > 1 ? (row.events * (row.atRisk - row.events)) / (row.atRisk - 1) : 0;
    tables.forEach((table, i) => {
      observed[i]! += weight * eventsAt(table.rows, row.time);
      expected[i]! += weight * row.events * share[i]!;
      share.forEach((other, j) => {
        variance[i]![j]! += weight ** 2 * spread * share[i]! * ((i === j ? 1 : 0) - other);
      });
    });
  }
  const compared = groups.map((_, i) => i).filter((i) => expected[i]! > 0);
  const df = Math.max(0, compared.length - 1);
  return {
    ...toTest(compared.slice(1), observed, expected, variance, df),
    groups: tables.map(({ n }, i) => ({ n, observed: observed[i]!, expected: expected[i]! })),
    variance,
    missing: pooled.missing,
    method: rho === 0 ? "Log-rank test" : `Weighted log-rank test, rho ${rho}`,
  };
}

function toTest(
  free: readonly number[],
  observed: readonly number[],
  expected: readonly number[],
  variance: readonly (readonly number[])[],
  df: number,
): Pick<LogRankTest, "chiSquare" | "df" | "p"> {
  if (free.length === 0 || free.every((i) => !(variance[i]![i]! > 0))) return { chiSquare: null, df, p: null };
  const gap = Matrix.columnVector(free.map((i) => observed[i]! - expected[i]!));
  const inverse = pseudoInverse(new Matrix(free.map((i) => free.map((j) => variance[i]![j]!))));
  const { statistic, p } = chiSquareTest(Math.max(0, gap.transpose().mmul(inverse).mmul(gap).get(0, 0)), df);
  return { chiSquare: statistic, df, p };
}

function atRiskAt(group: readonly SurvivalTime[], time: number): number {
  return group.filter((row) => row.time !== null && row.event !== null && row.time >= time).length;
}

function eventsAt(rows: readonly RiskRow[], time: number): number {
  return rows.find((row) => row.time === time)?.events ?? 0;
}
