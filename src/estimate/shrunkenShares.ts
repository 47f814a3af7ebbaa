import { designMatrix } from "./designMatrix.js";
import type { Dropped } from "./Dropped.js";
import { EstimateError } from "./EstimateError.js";
import { fitMixedLogistic } from "./fitMixedLogistic.js";
import { gaussHermite } from "./numeric/gaussHermite.js";
import { normalQuantile } from "./numeric/normalQuantile.js";
import { requireLevel } from "./numeric/requireLevel.js";
import type { Term } from "./Term.js";

/** What to compare, and what to allow for. */
export interface ShrunkenSharesOptions<Row extends object> {
  readonly rows: readonly Row[];
  /** Column of booleans or 0 and 1. */
  readonly outcome: string;
  /** What the groups may differ in without being better or worse: season, front or hind. */
  readonly terms: readonly Term[];
  /** Column that names the groups to compare: yards, or horses. */
  readonly group: string;
  /** Column that names smaller groups within them, whose rows are alike: horses of a yard. */
  readonly within?: string;
  /** Rows over which every group's share is averaged; all used rows when left out. */
  readonly averagedOver?: (row: Row) => boolean;
  readonly level?: number;
}

/** What is expected of one group, were its rows like those of all. */
export interface ShrunkenShare {
  readonly group: string;
  readonly cases: number;
  readonly n: number;
  /** Expected share, drawn towards that of all the more, the less is known of the group. */
  readonly estimate: number;
  readonly lower: number;
  readonly upper: number;
}

/** Groups compared fairly. */
export interface ShrunkenShares {
  /** By name. */
  readonly shares: readonly ShrunkenShare[];
  /** Expected share in a group that is not known, averaged over what groups may be. */
  readonly overall: number;
  /** How much groups differ: standard deviation of their log odds; 0 when no more than chance makes them. */
  readonly sd: number;
  readonly n: number;
  readonly dropped: readonly Dropped[];
  readonly level: number;
  readonly method: string;
  readonly notes: readonly string[];
}

/**
 * Share of cases expected in each group were its rows like those of all groups, drawn towards the mean by how little is known of it: a fair
 * comparison of yards, or of horses, where raw shares are mostly chance in small groups.
 *
 * Method: logistic regression on `terms` with random intercepts for `group`, and for `within` inside it (`fitMixedLogistic`, exact
 * maximum likelihood). For each group the fitted risk of every row averaged over, under the group's conditional mode, over the spread
 * of the inner groups (Gauss-Hermite, 20 points); the mean of those. Limits: the mode plus and minus z times its conditional spread,
 * carried to the share; coefficients and SDs are taken as known, so the limits are a little too narrow when groups are few. They are
 * of one group at a time: the highest of many is expected to be high.
 *
 * Missing: rows with something missing are left out and counted in `dropped`.
 *
 * Errors: those of `fitMixedLogistic`; `empty` when no row is left to average over.
 *
 * Source: Goldstein H, Spiegelhalter DJ (1996) J R Stat Soc A 159:385-443 (comparison by shrunken residuals with their spread).
 */
export function shrunkenShares<Row extends object>(options: ShrunkenSharesOptions<Row>): ShrunkenShares {
  const { rows, outcome, terms, group, within, averagedOver = () => true } = options;
  const level = requireLevel(options.level ?? 0.95);
  const groups = within === undefined ? ([group] as const) : ([group, within] as const);
  const fit = fitMixedLogistic({ rows, outcome, terms, groups, level });
  const { used, columns } = designMatrix(rows, terms, { outcome, also: groups });
  const sds = fit.groups.map(({ sd }) => sd);
  const counts = new Map<string, { cases: number; n: number }>();
  const predictors: number[] = [];
  used.forEach((place, i) => {
    const row = rows[place]!;
    const cells = row as Readonly<Record<string, unknown>>;
    const name = String(cells[group]);
    const count = counts.get(name) ?? { cases: 0, n: 0 };
    counts.set(name, { cases: count.cases + Number(cells[outcome]), n: count.n + 1 });
    if (averagedOver(row))
      predictors.push(fit.coefficients.reduce((sum, { estimate }, j) => sum + estimate * columns[j]![i]!, 0));
  });
  if (predictors.length === 0)
    throw new EstimateError("empty", "No row is left to average over.", "Average over rows that are used in the fit.");
  const cells = tallied(predictors);
  const innerSd = within === undefined ? 0 : sds[1]!;
  const share = (mode: number) => averageRisk(cells, mode, innerSd);
  const z = normalQuantile((1 + level) / 2);
  const shares = fit.conditionalModes[0]!.map(({ group: [name], mode, sd }): ShrunkenShare => ({
    group: String(name),
    ...counts.get(String(name))!,
    estimate: share(mode),
    lower: share(mode - z * sd),
    upper: share(mode + z * sd),
  }));
  return {
    shares: shares.sort((a, b) => (a.group < b.group ? -1 : 1)),
    overall: averageRisk(cells, 0, Math.hypot(...sds)),
    sd: sds[0]!,
    n: fit.n,
    dropped: fit.dropped,
    level,
    method: `${fit.method}. Shares of groups by their conditional modes, averaged over ${predictors.length} rows`,
    notes: fit.notes,
  };
}

interface Cell {
  readonly eta: number;
  readonly rows: number;
}

/** Rows with one linear predictor are averaged at once. */
function tallied(predictors: readonly number[]): readonly Cell[] {
  const counts = new Map<number, number>();
  for (const eta of predictors) counts.set(eta, (counts.get(eta) ?? 0) + 1);
  return [...counts].sort(([a], [b]) => a - b).map(([eta, rows]) => ({ eta, rows }));
}

function averageRisk(cells: readonly Cell[], shift: number, sd: number): number {
  const rule = sd === 0 ? { points: Float64Array.of(0), weights: Float64Array.of(1) } : gaussHermite(20);
  const density = (z: number) => (sd === 0 ? 1 : Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI));
  let [sum, total] = [0, 0];
  rule.points.forEach((z, k) => {
    const weight = rule.weights[k]! * density(z);
    for (const { eta, rows } of cells) {
      sum += (weight * rows) / (1 + Math.exp(-(eta + shift + sd * z)));
      total += weight * rows;
    }
  });
  return sum / total;
}
